"""Exact conversion factors; quantities inside the house are mm, kg, N, kPa, km/h and degrees."""

MM_PER_INCH = 25.4
KPA_PER_PSI = 6.894757293168361
KPA_PER_BAR = 100.0
KMH_PER_MPH = 1.609344
STANDARD_GRAVITY_M_S2 = 9.80665
DEGREES_PER_RADIAN = 57.29577951308232
