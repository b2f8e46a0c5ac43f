"""The only room that knows HTTP: wire models, routers, limits, security, observability, the server."""
