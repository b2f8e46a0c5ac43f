"""The routes, by subject; the app serves them in this order."""

from __future__ import annotations

from typing import Final

from fastapi import APIRouter

from service.api.routers import health

ROUTERS: Final[tuple[APIRouter, ...]] = (health.router,)
