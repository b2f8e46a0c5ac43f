"""x"""
TYRE_PATTERN: str = ""
