"""The routes, by subject; the app serves them in this order."""

from __future__ import annotations

from typing import Final

from fastapi import APIRouter

from service.api.routers import (
    designations,
    drawing_report,
    fitments,
    health,
    lines,
    many,
    page,
    planning,
    problems,
    tables,
)

ROUTERS: Final[tuple[APIRouter, ...]] = (
    lines.on_check,
    fitments.router,
    lines.router,
    many.router,
    planning.router,
    drawing_report.router,
    designations.router,
    tables.router,
    health.router,
    page.router,
    problems.router,
)
