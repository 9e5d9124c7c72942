"""Our own certificate authority: it vouches for a private network's addresses, for nothing else.

A phone that trusts it is no worse off: a certificate of it for any name on the internet is void, by
its own name constraints, even if its key is stolen.

References:
    RFC 5280, section 4.2.1.10 (name constraints) and 4.2.1.9 (path length), from memory; RFC 1918,
    RFC 3927, RFC 4193 (private addresses), from memory.
"""

import ipaddress
import os
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import datetime, timedelta
from pathlib import Path
from typing import Final

from cryptography import x509
from cryptography.hazmat.primitives import hashes, serialization
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.x509.oid import ExtendedKeyUsageOID, NameOID

from longpoint.errors import ExchangeError

NETWORKS: Final = (
    "10.0.0.0/8",
    "127.0.0.0/8",
    "169.254.0.0/16",
    "172.16.0.0/12",
    "192.168.0.0/16",
    "::1/128",
    "fc00::/7",
    "fe80::/10",
)
NAMES: Final = ("localhost", "local")
AUTHORITY_DAYS: Final = 3650
LEAF_DAYS: Final = 90
"""Short: it is made anew by itself. Browsers take no more than 397 days, from memory."""
RENEW_DAYS: Final = 30
EARLIER: Final = timedelta(days=1)
"""A phone's clock may be behind."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TlsFiles:
    """What a server needs, and what a phone is to trust.

    Attributes:
        authority: Certificate of the authority.
        certificate: Of this machine, for its addresses.
        key: Of that certificate.
        fingerprint: Of the authority's certificate, to be compared by eye.
    """

    authority: Path
    certificate: Path
    key: Path
    fingerprint: str


def tls_files(folder: Path, addresses: Sequence[str], now: datetime) -> TlsFiles:
    """Return the files for these addresses, made or made anew where that is due.

    Args:
        folder: Where they lie; made, and open to nobody else, if it isn't there.
        addresses: IP addresses and names by which phones call this machine.
        now: The time, with its zone.

    Raises:
        ExchangeError: They can't be read or written.
    """
    authority, authority_key = _authority_pair(folder)
    certificate, key = folder / "laptop.crt", folder / "laptop.key"
    with _told(folder):
        authority_file(folder, now)
        signer = x509.load_pem_x509_certificate(authority.read_bytes())
        if not _is_good(certificate, signer, addresses, now):
            signer_key = serialization.load_pem_private_key(authority_key.read_bytes(), None)
            assert isinstance(signer_key, ec.EllipticCurvePrivateKey)
            _write_pair(certificate, key, *_leaf(signer, signer_key, addresses, now))
    return TlsFiles(
        authority=authority,
        certificate=certificate,
        key=key,
        fingerprint=fingerprint(authority.read_bytes()),
    )


def authority_file(folder: Path, now: datetime) -> Path:
    """Return the authority's certificate, for phones to trust; made where it isn't there.

    Args:
        folder: As for `tls_files`.
        now: The time, with its zone.

    Raises:
        ExchangeError: It can't be written.
    """
    certificate, key = _authority_pair(folder)
    with _told(folder):
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        if not (certificate.exists() and key.exists()):
            _write_pair(certificate, key, *_new_authority(now))
    return certificate


def may_vouch_for(address: str) -> bool:
    """Tell whether a phone believes the authority about an IP address.

    Example:
        >>> may_vouch_for("192.168.43.7"), may_vouch_for("198.18.0.1")
        (True, False)
    """
    known = ipaddress.ip_address(address)
    return any(known in ipaddress.ip_network(network) for network in NETWORKS)


def fingerprint(certificate_pem: bytes) -> str:
    """Return the SHA-256 fingerprint of a certificate, in pairs of signs."""
    found = x509.load_pem_x509_certificate(certificate_pem).fingerprint(hashes.SHA256())
    return found.hex(":").upper()


def _authority_pair(folder: Path) -> tuple[Path, Path]:
    return folder / "authority.crt", folder / "authority.key"


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


def _new_authority(now: datetime) -> tuple[x509.Certificate, ec.EllipticCurvePrivateKey]:
    key = ec.generate_private_key(ec.SECP256R1())
    permitted: list[x509.GeneralName] = [x509.DNSName(name) for name in NAMES]
    permitted += [x509.IPAddress(ipaddress.ip_network(network)) for network in NETWORKS]
    name = _named(f"longpoint crew {x509.random_serial_number() % 10**6:06d}")
    made = (
        _begun(name, name, key, now, AUTHORITY_DAYS)
        .add_extension(x509.BasicConstraints(ca=True, path_length=0), critical=True)
        .add_extension(_usage(signs_certificates=True), critical=True)
        .add_extension(
            x509.NameConstraints(permitted_subtrees=permitted, excluded_subtrees=None),
            critical=True,
        )
        .sign(key, hashes.SHA256())
    )
    return made, key


def _leaf(
    signer: x509.Certificate,
    signer_key: ec.EllipticCurvePrivateKey,
    addresses: Sequence[str],
    now: datetime,
) -> tuple[x509.Certificate, ec.EllipticCurvePrivateKey]:
    key = ec.generate_private_key(ec.SECP256R1())
    names = x509.SubjectAlternativeName([_general_name(address) for address in addresses])
    server_only = x509.ExtendedKeyUsage([ExtendedKeyUsageOID.SERVER_AUTH])
    made = (
        _begun(_named("longpoint laptop"), signer.subject, key, now, LEAF_DAYS)
        .add_extension(x509.BasicConstraints(ca=False, path_length=None), critical=True)
        .add_extension(_usage(signs_certificates=False), critical=True)
        .add_extension(server_only, critical=False)
        .add_extension(names, critical=False)
        .add_extension(_issuer_of(signer), critical=False)
        .sign(signer_key, hashes.SHA256())
    )
    return made, key


def _begun(
    subject: x509.Name,
    issuer: x509.Name,
    key: ec.EllipticCurvePrivateKey,
    now: datetime,
    days: int,
) -> x509.CertificateBuilder:
    return (
        x509.CertificateBuilder()
        .subject_name(subject)
        .issuer_name(issuer)
        .public_key(key.public_key())
        .serial_number(x509.random_serial_number())
        .not_valid_before(now - EARLIER)
        .not_valid_after(now + timedelta(days=days))
        .add_extension(x509.SubjectKeyIdentifier.from_public_key(key.public_key()), critical=False)
    )


def _issuer_of(signer: x509.Certificate) -> x509.AuthorityKeyIdentifier:
    own = signer.extensions.get_extension_for_class(x509.SubjectKeyIdentifier).value
    return x509.AuthorityKeyIdentifier.from_issuer_subject_key_identifier(own)


def _usage(*, signs_certificates: bool) -> x509.KeyUsage:
    return x509.KeyUsage(
        digital_signature=not signs_certificates,
        key_cert_sign=signs_certificates,
        crl_sign=signs_certificates,
        content_commitment=False,
        key_encipherment=False,
        data_encipherment=False,
        key_agreement=False,
        encipher_only=False,
        decipher_only=False,
    )


def _named(name: str) -> x509.Name:
    return x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, name)])


def _general_name(address: str) -> x509.GeneralName:
    try:
        return x509.IPAddress(ipaddress.ip_address(address))
    except ValueError:
        return x509.DNSName(address)


def _is_good(path: Path, signer: x509.Certificate, addresses: Sequence[str], now: datetime) -> bool:
    """Tell whether a certificate can be used; one that was cut off in its making can't."""
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
    is_fresh = found.not_valid_after_utc - now > timedelta(days=RENEW_DAYS)
    return is_ours and is_fresh and {_general_name(each) for each in addresses} <= set(names)


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
