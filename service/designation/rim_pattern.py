"""x"""
RIM_PATTERN: str = ""
