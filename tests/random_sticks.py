"""Random pieces and houses for the nester's tests; the same for the same seed."""

import math
import random
from decimal import Decimal

from longpoint.pieces.piece import SQUARE_CUT, CutKind, EndCut, Piece, Role
from longpoint.quantities.length import Units
from longpoint.survey.house import Dialect, House
from longpoint.survey.instruments import Saw
from longpoint.survey.profiles import Offcut, Profile, Stock

STOCK_LENGTHS_MM = (2700.0, 3600.0, 4200.0, 4800.0, 5400.0)


def mitre(angle_deg: float) -> EndCut:
    return EndCut(kind=CutKind.MITRE, mitre_deg=angle_deg) if angle_deg else SQUARE_CUT


def architrave_piece(
    mark: str,
    inner_mm: float,
    left_deg: float,
    right_deg: float,
    width_mm: float = 66.0,
    role: Role = Role.HEAD,
    profile: str = "OG",
) -> Piece:
    slopes = math.tan(math.radians(left_deg)) + math.tan(math.radians(right_deg))
    outer_mm = inner_mm + width_mm * slopes
    return Piece(
        mark=mark,
        role=role,
        opening=mark.partition("-")[0],
        profile=profile,
        width_mm=width_mm,
        thickness_mm=18.0,
        inner_mm=inner_mm,
        outer_mm=outer_mm,
        back_mm=max(inner_mm, outer_mm),
        left=mitre(left_deg),
        right=mitre(right_deg),
    )


def skirting_piece(
    mark: str, face_mm: float, left_deg: float, right_deg: float, profile: str = "SK"
) -> Piece:
    slopes = math.tan(math.radians(left_deg)) + math.tan(math.radians(right_deg))

    def bevel(angle_deg: float) -> EndCut:
        if not angle_deg:
            return SQUARE_CUT
        return EndCut(kind=CutKind.BEVEL, bevel_deg=angle_deg)

    return Piece(
        mark=mark,
        role=Role.RUN,
        run=mark,
        profile=profile,
        width_mm=95.0,
        thickness_mm=18.0,
        inner_mm=face_mm,
        outer_mm=face_mm,
        back_mm=face_mm + 18.0 * slopes,
        left=bevel(left_deg),
        right=bevel(right_deg),
    )


def house_of(
    *,
    width_mm: float = 66.0,
    reversible: bool = False,
    kerf_mm: float = 2.5,
    end_trim_mm: float = 10.0,
    lengths_mm: tuple[float, ...] = STOCK_LENGTHS_MM,
    prices: tuple[str, ...] = (),
    counts: tuple[int | None, ...] = (),
    offcuts: tuple[tuple[float, int], ...] = (),
    profile: str = "OG",
) -> House:
    return House(
        name="Test House",
        units=Units.MM,
        dialect=Dialect.UK,
        profiles=(
            Profile(name=profile, width_mm=width_mm, thickness_mm=18.0, reversible=reversible),
        ),
        tapes=(),
        saw=Saw(name="S1", kerf_mm=kerf_mm, end_trim_mm=end_trim_mm),
        stock=tuple(
            Stock(
                profile=profile,
                length_mm=length_mm,
                price=Decimal(prices[i]) if prices else None,
                count=counts[i] if counts else None,
            )
            for i, length_mm in enumerate(lengths_mm)
        ),
        offcuts=tuple(Offcut(profile=profile, length_mm=mm, count=n) for mm, n in offcuts),
    )


def house_pieces(
    seed: int, openings: int = 36, width_mm: float = 66.0, odd_deg: float = 0.4
) -> tuple[Piece, ...]:
    """Doors and windows of one house, legs and head each; mitres up to `odd_deg` off 45."""
    draw = random.Random(seed)
    pieces = []
    for number in range(1, openings + 1):
        off_left, off_right = (round(draw.uniform(-odd_deg, odd_deg), 2) for _ in range(2))
        if draw.random() < 0.6:
            wide = draw.choice((686, 762, 838, 926)) + draw.uniform(-4, 4)
            high = 2040 + draw.uniform(-8, 8)
        else:
            wide = draw.uniform(500, 2400)
            high = draw.uniform(600, 1500)
        mark = f"W{number}"
        pieces += [
            architrave_piece(
                f"{mark}-head", wide, 45 + off_left, 45 + off_right, width_mm, Role.HEAD
            ),
            architrave_piece(
                f"{mark}-right-leg",
                high + draw.uniform(-2, 2),
                45 - off_right,
                0.0,
                width_mm,
                Role.RIGHT_LEG,
            ),
            architrave_piece(
                f"{mark}-left-leg",
                high + draw.uniform(-2, 2),
                0.0,
                45 - off_left,
                width_mm,
                Role.LEFT_LEG,
            ),
        ]
    return tuple(pieces)
