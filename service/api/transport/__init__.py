"""What the network needs: server, protocol limits, routes, strict JSON, security, observability."""
