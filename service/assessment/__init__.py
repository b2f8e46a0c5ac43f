"""The heart: plain data in, plain data out; what a candidate fitment does to a vehicle, and whether it suits."""
