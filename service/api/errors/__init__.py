"""Every fault becomes problem+json; no other room knows a status code for one."""
