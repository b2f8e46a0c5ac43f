"""The routes, by subject; the app serves them in this order."""

from __future__ import annotations

from typing import Final

from fastapi import APIRouter

from service.api.routers import designations, fitments, health, tables

ROUTERS: Final[tuple[APIRouter, ...]] = (
    fitments.router,
    designations.router,
    tables.router,
    health.router,
)
