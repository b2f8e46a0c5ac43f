"""Pages for people: the printable report and the page to try the service on."""
