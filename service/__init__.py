"""The fitment service: will these tyres and rims suit this vehicle, and what does the change do to it?"""

__version__ = "0.2.0"
