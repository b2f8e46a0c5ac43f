"""The same grades on arrays: grading, compare, search, ranking and what each axle needs."""
