"""The law of the place as data: one file per place, read and checked before the service answers anything."""
