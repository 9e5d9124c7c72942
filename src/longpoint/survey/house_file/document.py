"""Write a house back as a document of the house file's format."""

from collections.abc import Iterable
from decimal import Decimal
from typing import Any

from longpoint.quantities.length import Units
from longpoint.speech.said import say
from longpoint.survey.as_built import AsBuilt
from longpoint.survey.house import House
from longpoint.survey.house_file.as_built_document import as_built_document
from longpoint.survey.house_file.crew_document import crew_document, season_document
from longpoint.survey.house_file.face_readings import ASSUMED_U_DEG, GAUGES, MIDDLES
from longpoint.survey.house_file.fixing_document import fixing_document
from longpoint.survey.house_file.handover_document import defect_document, handover_document
from longpoint.survey.house_file.house_table import FORMAT
from longpoint.survey.house_file.set_document import (
    arch_document,
    outline_document,
    set_document,
)
from longpoint.survey.house_file.written_numbers import number_text
from longpoint.survey.instruments import Saw, Tape
from longpoint.survey.openings import Mitres, Opening, PerSide
from longpoint.survey.profiles import Offcut, Profile, Stock
from longpoint.survey.readings import OpeningReadings
from longpoint.survey.rooms import (
    FloorFit,
    FloorPoint,
    Room,
    RoomDiagonal,
    Run,
    Wall,
    WallOpening,
)
from longpoint.survey.trims import TrimEntry


def house_document(house: House) -> dict[str, object]:
    """Return a house as a document that `read_house` reads back to the same house.

    Every setting is written at the opening, room or run where it holds; entries that couldn't be
    read are not in it.

    Args:
        house: The house.

    Returns:
        A document that can be written as JSON.
    """
    return _Writer(house).document()


def _filled(**keys: Any) -> dict[str, Any]:  # noqa: ANN401
    """Return the keys that say something."""
    return {key: value for key, value in keys.items() if value not in (None, "", [], {}, ())}


class _Writer:
    """Write one house, in its own units."""

    def __init__(self, house: House) -> None:
        self.house = house
        self.tapes = {tape.name: tape for tape in house.tapes}

    def document(self) -> dict[str, object]:
        """Return the whole document."""
        house = self.house
        default = house.tapes[0] if house.tapes else None
        crew, seasons, fixing = house.crew, house.seasons, house.fixing
        return {
            "format": FORMAT,
            "name": house.name,
            "units": house.units.value,
            "dialect": house.dialect.value,
            "defaults": _filled(
                skirting=house.skirting_profile,
                tape="" if default is None or default.assumed else default.name,
                saw_tape=self.saw_tape(),
                saw="" if house.saw.assumed else house.saw.name,
                floor_gap=self.length(house.floor_gap_mm),
                max_run=self.length(house.longest_run_mm),
            ),
            **({} if crew.assumed else {"crew": crew_document(crew, self.length)}),
            **({} if seasons.assumed else {"season": season_document(seasons)}),
            **({} if house.handover.assumed else {"handover": handover_document(house.handover)}),
            **({} if fixing.assumed else {"fixing": fixing_document(fixing, self.length)}),
            "profiles": {each.name: self.profile(each) for each in house.profiles},
            "tapes": {each.name: self.tape(each) for each in house.tapes if not each.assumed},
            "saws": {} if house.saw.assumed else {house.saw.name: self.saw(house.saw)},
            "stock": [self.stock(each) for each in house.stock],
            "offcuts": [self.offcut(each) for each in house.offcuts],
            "openings": [self.opening(each) for each in house.openings],
            "rooms": [self.room(each) for each in house.rooms],
            "runs": [self.run(each) for each in house.runs],
            **_filled(trims=[self.trim(each) for each in house.trims]),
            **_filled(defects=[defect_document(each, self.length) for each in house.defects]),
        }

    def length(self, length_mm: float | None) -> int | float | str | None:
        """Return a length as it is written in this house: a number, or millimetres as text."""
        if length_mm is None:
            return None
        if self.house.units is Units.INCH:
            return say("{number} mm", number=number_text(length_mm))
        return int(length_mm) if float(length_mm).is_integer() else length_mm

    def read_length(self, length_mm: float | None, tape: Tape) -> int | float | str | None:
        """Return what the tape showed for a length: its known offset is put back."""
        if not length_mm or tape.take_off_mm == 0:
            return self.length(length_mm)
        return self.length(round(length_mm + tape.take_off_mm, 6))

    def written(self, texts: Iterable[str]) -> Any:  # noqa: ANN401
        """Return readings as written; text that a number gives again becomes the number."""
        values = [_as_number(text) for text in texts]
        return values[0] if len(values) == 1 else values

    def tape_name(self, name: str) -> str:
        """Return the name to write for a tape; empty for the one that was assumed."""
        return "" if self.tape_of(name).assumed else name

    def saw_tape(self) -> str:
        """Return the name of the tape that marks at the saw; empty for the default tape."""
        name = self.house.saw_tape
        is_default = any(name == tape.name for tape in self.house.tapes[:1])
        return "" if is_default else self.tape_name(name)

    def tape_of(self, name: str) -> Tape:
        """Return the tape of a name; one of no known offset where the house has none."""
        return self.tapes.get(name, Tape(name=name))

    def profile(self, profile: Profile) -> dict[str, Any]:
        return _filled(
            face=self.length(profile.width_mm),
            thickness=self.length(profile.thickness_mm),
            reversible=profile.reversible,
            grain_matched=profile.grain_matched or None,
            thin_edge=self.length(profile.thin_edge_mm),
            material=profile.material,
            section=[[self.length(each) for each in point] for point in profile.section],
        )

    def tape(self, tape: Tape) -> dict[str, Any]:
        return _filled(
            **{"class": tape.tape_class.value if tape.tape_class else None},
            max_error=self.length(tape.max_error_mm),
            resolution=self.length(tape.resolution_mm),
            take_off=self.length(tape.take_off_mm),
            check=_filled(
                stick=self.length(tape.check_stick_mm),
                inside=self.length(tape.check_inside_mm),
                outside=self.length(tape.check_outside_mm),
            ),
        )

    def saw(self, saw: Saw) -> dict[str, Any]:
        return _filled(
            kerf=self.length(saw.kerf_mm),
            end_trim=self.length(saw.end_trim_mm),
            found=_filled(left=saw.found_left_deg, right=saw.found_right_deg),
            keep=self.length(saw.keep_mm),
            skirting=saw.skirting.value,
            blade=saw.blade,
            setting=saw.setting,
            dialled=_filled(left=saw.dialled_left_deg or None, right=saw.dialled_right_deg or None),
        )

    def stock(self, stock: Stock) -> dict[str, Any]:
        return _filled(
            profile=stock.profile,
            length=self.length(stock.length_mm),
            price=None if stock.price is None else _price_text(stock.price),
            count=stock.count,
            supplier=stock.supplier,
            code=stock.code,
        )

    def offcut(self, offcut: Offcut) -> dict[str, Any]:
        return _filled(
            profile=offcut.profile,
            length=self.length(offcut.length_mm),
            count=None if offcut.label else offcut.count,
            label=offcut.label,
        )

    def opening(self, opening: Opening) -> dict[str, Any]:
        return _filled(
            mark=opening.mark,
            room=opening.room,
            kind=opening.kind.value,
            trim=opening.layout.value,
            **self.face(opening.readings),
            lining_edge=self.length(opening.lining_edge_mm),
            faces=opening.faces,
            b=self.face_b(opening),
            quirk=_per_side(opening.quirk_mm.map(self.length)),
            quirk_band=[self.length(each) for each in opening.quirk_band_mm],
            architrave=_per_side(opening.profiles),
            board=opening.board,
            horn=self.length(opening.horn_mm) if opening.board else None,
            method=opening.method.value,
            mitres="" if opening.mitres is Mitres.AS_READ else opening.mitres.value,
            tap_room=self.length(opening.tap_room_mm),
            floor_cover=self.length(opening.floor_cover_mm) if opening.stands_on_floor else None,
            max_gap=self.length(opening.max_gap_mm),
            raked=opening.raked,
            arch=opening.arch and arch_document(opening.arch, self.length),
            **outline_document(opening, self.length, self.tape_of),
            **set_document(opening, self.length, self.tape_of),
            nominal=opening.nominal
            and _filled(
                width=self.length(opening.nominal.width_mm),
                height=self.length(opening.nominal.height_mm),
            ),
            batch=opening.batch,
            accept=list(opening.accept),
            as_built=self.as_built(opening.as_built),
        )

    def face_b(self, opening: Opening) -> dict[str, Any]:
        """Return the keys of the second face, empty when it is the mirror of the first."""
        return {
            **(self.face(opening.readings_b) if opening.readings_b else {}),
            **_filled(as_built=self.as_built(opening.as_built_b)),
        }

    def as_built(self, as_built: AsBuilt | None) -> dict[str, Any] | None:
        return None if as_built is None else as_built_document(as_built, self.length)

    def face(self, readings: OpeningReadings) -> dict[str, Any]:
        """Return the keys of the readings of one face, in the order they were written."""
        keys: dict[str, Any] = {}
        middles = {place: key for key, place in MIDDLES.items()}
        for place in dict.fromkeys(reading.place for reading in readings.lengths):
            value = self.written(r.written for r in readings.written() if r.place is place)
            if place in middles:
                keys.setdefault("middle", {})[middles[place]] = value
            else:
                keys[place.value] = value
        for key, inner in _angles(readings).items():
            keys[key] = inner
        if readings.plane is not None:
            plane = readings.plane
            keys["plane"] = {
                "tl": self.length(plane.tl_mm),
                "tr": self.length(plane.tr_mm),
                "br": self.length(plane.br_mm),
                "bl": self.length(plane.bl_mm),
            }
        return {**keys, **_filled(tape=self.tape_name(readings.tape), by=readings.by)}

    def room(self, room: Room) -> dict[str, Any]:
        tape = self.tape_of(room.tape)
        return _filled(
            name=room.name,
            closed=room.closed,
            walls=[self.wall(wall, tape) for wall in room.walls],
            diagonals=[self.diagonal(each, tape) for each in room.diagonals],
            tape=self.tape_name(room.tape),
            floor_cover=self.length(room.floor_cover_mm),
            accept=list(room.accept),
        )

    def wall(self, wall: Wall, tape: Tape) -> dict[str, Any]:
        times = (wall.length_mm,) * (2 if wall.read_twice else 1)
        lengths = [self.read_length(each, tape) for each in wall.contradicted_mm or times]
        return _filled(
            mark=wall.mark,
            length=lengths if len(lengths) > 1 else lengths[0],
            corner=wall.corner_deg,
            corner_u=wall.corner_u_deg,
            bow=self.length(wall.bow_mm),
            lean=wall.lean_deg,
            floor=self.floor(wall.floor),
            floor_fit="" if wall.floor_fit is FloorFit.FOLLOW else wall.floor_fit.value,
            openings=[self.wall_opening(each, tape) for each in wall.openings],
            skirting=wall.skirting,
            profile=wall.profile,
        )

    def floor(self, points: Iterable[FloorPoint]) -> list[Any]:
        return [[self.length(at_mm), self.length(height_mm)] for at_mm, height_mm in points]

    def wall_opening(self, opening: WallOpening, tape: Tape) -> dict[str, Any]:
        return _filled(mark=opening.mark, from_left=self.read_length(opening.from_left_mm, tape))

    def diagonal(self, diagonal: RoomDiagonal, tape: Tape) -> dict[str, Any]:
        return {
            "from": diagonal.start,
            "to": diagonal.end,
            "length": self.read_length(diagonal.length_mm, tape),
        }

    def run(self, run: Run) -> dict[str, Any]:
        return _filled(
            mark=run.mark,
            room=run.room,
            wall=run.wall,
            profile=run.profile,
            length=self.read_length(run.length_mm, self.tape_of(run.tape)),
            left=run.left.value,
            right=run.right.value,
            left_corner=run.left_corner_deg,
            right_corner=run.right_corner_deg,
            left_rake=run.left_rake_deg,
            right_rake=run.right_rake_deg,
            lean=run.lean_deg,
            left_lean=run.left_lean_deg,
            right_lean=run.right_lean_deg,
            floor=self.floor(run.floor),
            floor_fit="" if run.floor_fit is None else run.floor_fit.value,
            tape=self.tape_name(run.tape),
            accept=list(run.accept),
        )

    def trim(self, trim: TrimEntry) -> dict[str, Any]:
        """Return a trim as it was written, its tape named: a document has no default for it."""
        return {**trim.written, **_filled(tape=self.tape_name(trim.tape))}


def _per_side(values: PerSide[Any]) -> dict[str, Any]:
    return {
        "head": values.head,
        "left": values.left,
        "right": values.right,
        "sill": values.bottom,
    }


def _angles(readings: OpeningReadings) -> dict[str, Any]:
    keys: dict[str, Any] = {}
    for key, gauges in GAUGES.items():
        inner: dict[str, Any] = {}
        for name, gauge in gauges.items():
            values = [each.value_deg for each in readings.angles if each.gauge is gauge]
            if values:
                inner[name] = values[0] if len(values) == 1 else values
        if inner:
            keys[key] = inner
            doubts = [each.u_deg for each in readings.angles if each.gauge in gauges.values()]
            keys[f"{key}_u"] = doubts[0] if doubts else ASSUMED_U_DEG[key]
    return keys


def _as_number(text: str) -> int | float | str:
    try:
        number = float(text)
        if number_text(number) == text and number < 1e12:
            return int(number) if number.is_integer() else number
    except ValueError:
        pass
    return text


def _price_text(price: Decimal) -> str:
    return f"{price:f}"
