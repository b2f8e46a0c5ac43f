"""What was found becomes an answer: plain data, then bytes."""
