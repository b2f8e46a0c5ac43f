"""The routes, by subject; the app serves them in this order."""

from __future__ import annotations

from typing import Final

from fastapi import APIRouter

from service.api.routers import (
    check_lines,
    designations,
    drawing_report,
    fitments,
    health,
    many,
    page,
    planning,
    plotted_comparison,
    problems,
    tables,
)

ROUTERS: Final[tuple[APIRouter, ...]] = (
    check_lines.on_check,
    fitments.router,
    check_lines.router,
    many.router,
    plotted_comparison.router,
    planning.router,
    drawing_report.router,
    designations.router,
    tables.router,
    health.router,
    page.router,
    problems.router,
)
