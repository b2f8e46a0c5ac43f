"""The sentences of the service in other languages: one gettext catalogue each, and how they are said."""
