"""One case answered: findings, verdict, job card, assumptions, what is gained and lost."""
