"""Body text to request model to case: what the caller sent becomes what the assessment asks."""
