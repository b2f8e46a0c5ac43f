"""Questions asked and answered at the terminal, without a server."""

from service.terminal.questions import QUESTIONS, add_questions, answer_question

__all__ = ["QUESTIONS", "add_questions", "answer_question"]
