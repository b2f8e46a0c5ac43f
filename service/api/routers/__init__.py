"""The routes, by subject; the app serves them in this order."""

from __future__ import annotations

from typing import Final

from fastapi import APIRouter

from service.api.routers import designations, drawing_report, fitments, health, many, page, planning, tables

ROUTERS: Final[tuple[APIRouter, ...]] = (
    fitments.router,
    many.router,
    planning.router,
    drawing_report.router,
    designations.router,
    tables.router,
    health.router,
    page.router,
)
