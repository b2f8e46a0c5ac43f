"""The routes, by subject; the app serves them in this order."""

from __future__ import annotations

from typing import Final

from fastapi import APIRouter

from service.api.routers import (
    designations,
    drawing_report,
    fitments,
    health,
    many,
    many_checks,
    page,
    planning,
    problems,
    tables,
)

ROUTERS: Final[tuple[APIRouter, ...]] = (
    many_checks.on_check,
    fitments.router,
    many_checks.router,
    many.router,
    planning.router,
    drawing_report.router,
    designations.router,
    tables.router,
    health.router,
    page.router,
    problems.router,
)
