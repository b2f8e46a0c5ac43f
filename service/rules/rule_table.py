"""Rules as they are written in a pack: `[[rules]]` tables into rules."""

from __future__ import annotations

from service.rules.provenance import basis_of
from service.rules.quantities import QUANTITIES
from service.rules.rule import CATEGORIES, COMPARISONS, RULE_AXLES, Applies, Bound, Rule
from service.rules.table import Table

# The one quantity that a rule may derate: a passenger tyre's rating is divided on some vehicles.
DIVIDED = "load_rating_sum_margin_kg"


def read_rules(top: Table, pack: str) -> tuple[Rule, ...]:
    """Return the rules of a file; a code that repeats is a fault."""
    rules: list[Rule] = []
    for table in top.tables("rules"):
        rule = read_rule(table, pack)
        if any(rule.code == other.code for other in rules):
            table.fault("code", f"the code {rule.code} repeats")
        rules.append(rule)
    return tuple(rules)


def read_rule(table: Table, pack: str) -> Rule:
    """Return one rule from its table."""
    code = table.text("code")
    table.label = code
    if not code.startswith("law."):
        table.fault("code", "the code of a pack's own rule begins with `law.`")
    if table.has("any_of"):
        parts = table.tables("any_of", code)
        bounds = tuple(read_bound(part) for part in parts)
        for part in parts:
            part.done()
        if len(bounds) <= 1:
            table.fault("any_of", "any_of needs two bounds or more")
    else:
        bounds = (read_bound(table),)
    given = table.provenance()
    if given.status in ("derived", "own"):
        table.fault("status", "a rule of the place is read, second_hand or memory")
    valid_from, valid_to = table.window("valid_from", "valid_to")
    divisor = table.number_or_none("divisor")
    if divisor is not None and (divisor < 1 or bounds[0].quantity != DIVIDED):
        table.fault("divisor", f"a divisor of 1 or more belongs to {DIVIDED} alone")
    rule = Rule(
        code=code,
        title=table.text("title"),
        message=table.text("message"),
        bounds=bounds,
        applies=read_applies(table),
        article=given.article,
        source=given.source,
        status=given.status,
        checked=given.checked,
        basis=basis_of(given),
        pack=pack,
        divisor=1.0 if divisor is None else divisor,
        stand_in=table.flag_or_none("stand_in") or False,
        valid_from=valid_from,
        valid_to=valid_to,
        note=given.note,
    )
    table.done()
    return rule


def read_bound(table: Table) -> Bound:
    """Return one bound: quantity, comparison, value and the quantity's unit."""
    quantity = table.choice("quantity", tuple(QUANTITIES))
    comparison = table.choice("comparison", COMPARISONS)
    value = table.number("value")
    unit = table.choice("unit", (QUANTITIES[quantity].unit,))
    return Bound(quantity, comparison, value, unit)


def read_applies(table: Table) -> Applies:
    """Return for whom the rule, relief or speedometer rule of this table is written."""
    categories = table.texts("categories")
    unknown = [name for name in categories if name not in CATEGORIES]
    if unknown:
        table.fault("categories", f"unknown category {unknown[0][:60]!r}; known: {', '.join(CATEGORIES)}")
    built_from, built_to = table.window("built_from", "built_to")
    over_mass_kg, max_mass_kg = table.number_or_none("over_mass_kg"), table.number_or_none("max_mass_kg")
    if over_mass_kg is not None and max_mass_kg is not None and over_mass_kg >= max_mass_kg:
        table.fault("over_mass_kg", "over_mass_kg must lie below max_mass_kg")
    return Applies(
        categories=categories,
        axle=table.choice("axle", RULE_AXLES, "any"),
        driven=table.flag_or_none("driven"),
        over_mass_kg=over_mass_kg,
        max_mass_kg=max_mass_kg,
        built_from=built_from,
        built_to=built_to,
    )
