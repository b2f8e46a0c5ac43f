"""A place's rules against the view: what is measured, how it came out, and what would keep a rule."""
