"""Our own certificate authority: it vouches for a private network's addresses, for nothing else.

A phone that trusts it is no worse off: a certificate of it for any name on the internet is void, by
its own name constraints, even if its key is stolen.

This is about the files that they lie in; `certificates` makes what is in them.
"""

import os
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from itertools import count
from pathlib import Path
from typing import Final

from cryptography import x509
from cryptography.hazmat.primitives import hashes, serialization
from cryptography.hazmat.primitives.asymmetric import ec

from longpoint.errors import ExchangeError
from longpoint.serve.certificates import general_name, leaf, new_authority

RENEW_DAYS: Final = 30


@dataclass(frozen=True, slots=True, kw_only=True)
class TlsFiles:
    """What a server needs, and what a phone is to trust.

    Attributes:
        authority: Certificate of the authority.
        certificate: Of this machine, for its addresses.
        key: Of that certificate.
        fingerprint: Of the authority's certificate, to be compared by eye.
        lost_on: The authority's key is lost: the day on which this machine can't be served any
            more; None: the key is there.
    """

    authority: Path
    certificate: Path
    key: Path
    fingerprint: str
    lost_on: date | None = None


def tls_files(folder: Path, addresses: Sequence[str], now: datetime) -> TlsFiles:
    """Return the files for these addresses, made or made anew where that is due.

    Args:
        folder: Where they lie; made, and open to nobody else, if it isn't there.
        addresses: IP addresses and names by which phones call this machine.
        now: The time, with its zone.

    Raises:
        ExchangeError: They can't be read or written, or the authority's key is lost and needed.
    """
    certificate, key = folder / "laptop.crt", folder / "laptop.key"
    with _told(folder):
        authority = authority_file(folder, now)
        signer = x509.load_pem_x509_certificate(authority.read_bytes())
        signer_key = _signer_key(folder, signer)
        # Without its key the authority vouches no more: what it signed is used to its end.
        ahead = timedelta(days=RENEW_DAYS if signer_key else 0)
        if not _is_good(certificate, signer, addresses, now + ahead):
            if signer_key is None:
                raise _lost(folder)
            _write_pair(certificate, key, *leaf(signer, signer_key, addresses, now))
        served = x509.load_pem_x509_certificate(certificate.read_bytes())
    return TlsFiles(
        authority=authority,
        certificate=certificate,
        key=key,
        fingerprint=fingerprint(authority.read_bytes()),
        lost_on=None if signer_key else served.not_valid_after_utc.date(),
    )


def authority_file(folder: Path, now: datetime) -> Path:
    """Return the authority's certificate, for phones to trust; made where there was none yet.

    Args:
        folder: As for `tls_files`.
        now: The time, with its zone.

    Raises:
        ExchangeError: It can't be written; or there was one that phones trust, and it is lost.
    """
    certificate, key = _authority_pair(folder)
    with _told(folder):
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        if not certificate.exists():
            # A certificate that it signed: phones were served, so another would be a stranger.
            if (folder / "laptop.crt").exists():
                raise _lost(folder)
            _write_pair(certificate, key, *new_authority(now))
    return certificate


def authority_anew(folder: Path, now: datetime) -> Path:
    """Return the certificate of a new authority, which every phone has to trust anew.

    What lay there before is set aside, not thrown away: a key may be found again.

    Args:
        folder: As for `tls_files`.
        now: The time, with its zone.

    Raises:
        ExchangeError: It can't be written.
    """
    with _told(folder):
        there = [folder / f"{of}.{end}" for of in ("authority", "laptop") for end in ("crt", "key")]
        asides = ([each.with_name(f"{each.name}.before-{n}") for each in there] for n in count(1))
        aside = next(names for names in asides if not any(name.exists() for name in names))
        for each, name in zip(there, aside, strict=True):
            if each.exists():
                each.replace(name)
    return authority_file(folder, now)


def fingerprint(certificate_pem: bytes) -> str:
    """Return the SHA-256 fingerprint of a certificate, in pairs of signs."""
    found = x509.load_pem_x509_certificate(certificate_pem).fingerprint(hashes.SHA256())
    return found.hex(":").upper()


def _authority_pair(folder: Path) -> tuple[Path, Path]:
    return folder / "authority.crt", folder / "authority.key"


def _signer_key(folder: Path, signer: x509.Certificate) -> ec.EllipticCurvePrivateKey | None:
    """Return the authority's key; None where it is missing, damaged or another's."""
    try:
        found = serialization.load_pem_private_key(_authority_pair(folder)[1].read_bytes(), None)
    except (FileNotFoundError, ValueError):
        return None
    is_its = found.public_key() == signer.public_key()
    return found if is_its and isinstance(found, ec.EllipticCurvePrivateKey) else None


def _lost(folder: Path) -> ExchangeError:
    return ExchangeError(
        f"The authority that phones trust is needed; it lies in {folder}.",
        "Its certificate or its key, authority.key, is missing or damaged, so nothing can be shown "
        "to a phone that it would believe.",
        "Bring authority.crt and authority.key back from a copy of that folder. If there is none: "
        "`longpoint crew authority FILE --anew` makes another, and every phone has to be given "
        "FILE and trust it anew. Houses, and who was let in, stay.",
    )


@contextmanager
def _told(folder: Path) -> Iterator[None]:
    """Turn what files and damaged certificates raise inside into an `ExchangeError`."""
    try:
        yield
    except (OSError, ValueError) as trouble:
        raise ExchangeError(
            f"The certificates of the crew's laptop in {folder} were to be used.",
            f"They can't be: {trouble}.",
            "Make room, or put the folder aside: new ones are made, and phones trust them anew.",
        ) from trouble


def _is_good(path: Path, signer: x509.Certificate, addresses: Sequence[str], on: datetime) -> bool:
    """Tell whether a certificate can be used on a day; one cut off in its making can't."""
    key = path.with_suffix(".key")
    if not path.exists() or not key.exists():
        return False
    try:
        found = x509.load_pem_x509_certificate(path.read_bytes())
        own = serialization.load_pem_private_key(key.read_bytes(), None).public_key()
    except ValueError:
        return False
    if own != found.public_key():
        return False
    names = found.extensions.get_extension_for_class(x509.SubjectAlternativeName).value
    is_ours = found.issuer == signer.subject
    is_fresh = found.not_valid_after_utc > on
    return is_ours and is_fresh and {general_name(each) for each in addresses} <= set(names)


def _write_pair(
    certificate: Path,
    key: Path,
    made: x509.Certificate,
    made_key: ec.EllipticCurvePrivateKey,
) -> None:
    """Write a key that only its owner may read, then its certificate, whole or not at all."""
    key_pem = made_key.private_bytes(
        serialization.Encoding.PEM,
        serialization.PrivateFormat.PKCS8,
        serialization.NoEncryption(),
    )
    key.unlink(missing_ok=True)
    with os.fdopen(os.open(key, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600), "wb") as file:
        file.write(key_pem)
    beside = certificate.with_suffix(".part")
    beside.write_bytes(made.public_bytes(serialization.Encoding.PEM))
    beside.replace(certificate)
