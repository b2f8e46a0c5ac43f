"""Present against proposed, computed once, in four steps: facts, figures, change, views."""
