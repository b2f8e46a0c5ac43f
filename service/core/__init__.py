"""Units, errors, sources and the vocabulary of findings; depends on nothing else in the house."""
