"""What a speedometer reads beside the true speed, and how the rolling circumference changes, in words."""

from __future__ import annotations

from service.assessment.checks.words import apart, beside_true_speed, plain
from service.core.saying import Amount, Said, say


def changes(change_percent: float, *, shown: bool = False) -> Said:
    """Return by how much the rolling circumference changes; where `shown`, what the speedometer makes of it too."""
    share: str = plain(abs(change_percent), 1, "%")
    if share == "0 %":
        share = say("less than {share}", share=Amount(0.1, "%", 1))
    if not shown and change_percent > 0.0:
        return say("The rolling circumference grows by {share}.", share=share)
    if not shown:
        return say("The rolling circumference shrinks by {share}.", share=share)
    if change_percent > 0.0:
        return say("The rolling circumference grows by {share}, so the speedometer shows less than now.", share=share)
    return say("The rolling circumference shrinks by {share}, so the speedometer shows more than now.", share=share)


def reading(now_percent: float, after_percent: float, *, low: bool = False) -> Said:
    """Return what the speedometer reads now and after the change, without a full stop.

    Where it reads `low`, the number after the change has as many decimals as show it.
    """
    now, after = beside_true_speed(now_percent), beside_true_speed(after_percent)
    share = plain(abs(after_percent), 1, "%")
    if low:
        share = apart(-after_percent, 0.0, 1, "%")
        after = say("{share} below the true speed", share=share)
    if after == now:
        return say("The speedometer reads {now} now and after the change", now=now)
    if low or (after_percent < 0.0 and share != "0 %"):
        return say("The speedometer reads {now} now and {share} below it after the change", now=now, share=share)
    if share != "0 %":
        return say("The speedometer reads {now} now and {share} above it after the change", now=now, share=share)
    return say("The speedometer reads {now} now and the true speed after the change", now=now)
