"""Questions asked and answered at the terminal, without a server."""

from service.terminal.questions import add_questions, answer_question

__all__ = ["add_questions", "answer_question"]
