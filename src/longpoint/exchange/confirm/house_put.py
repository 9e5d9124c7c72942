"""Write what was confirmed into a house file on disk, the whole file or nothing."""

import json
from pathlib import Path

from longpoint.catalogue.all_trims import trim_tables
from longpoint.exchange.confirm.found_values import FoundValue
from longpoint.exchange.confirm.put_in_house import PutPlan, put_plan
from longpoint.exchange.confirm.toml_edits import with_entries
from longpoint.exchange.house_files import load_house_document, load_house_text
from longpoint.exchange.safe_files import write_text_safely
from longpoint.survey.house_file import read_house


def put_in_house_file(path: Path, values: tuple[FoundValue, ...]) -> PutPlan:
    """Put confirmed values into a house file; doing it again changes nothing.

    Args:
        path: The house file, TOML or JSON.
        values: The list, as a person left it.

    Returns:
        What was done, and what wasn't.

    Raises:
        ExchangeError: The file can't be read, changed safely or written; it is then as it was.
        SurveyError: It can't be used as a house, before or after.
    """
    document = load_house_document(path)
    units = read_house(document, trim_tables()).house.units
    plan = put_plan(document, values, units)
    if plan.is_empty:
        return plan
    text = load_house_text(path)
    if text.lstrip().startswith("{") or path.suffix.lower() == ".json":
        changed = json.loads(text)
        for (where, which), keys in plan.into.items():
            changed[where][which] |= keys
        for where, name, keys in plan.new:
            if name:
                changed.setdefault(where, {})[name] = keys
            else:
                changed.setdefault(where, []).append(keys)
        text = json.dumps(changed, ensure_ascii=False, indent=1) + "\n"
    else:
        text, changed = with_entries(text, document, plan.into, plan.new)
    read_house(changed, trim_tables())
    write_text_safely(path, text)
    return plan
