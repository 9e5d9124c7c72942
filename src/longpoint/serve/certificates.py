"""Certificates of our own: the authority's, void outside a private network, and the laptop's.

References:
    RFC 5280, section 4.2.1.10 (name constraints) and 4.2.1.9 (path length), from memory; RFC 1918,
    RFC 3927, RFC 4193 (private addresses), from memory.
"""

import ipaddress
from collections.abc import Sequence
from datetime import datetime, timedelta
from typing import Final

from cryptography import x509
from cryptography.hazmat.primitives import hashes
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.x509.oid import ExtendedKeyUsageOID, NameOID

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
EARLIER: Final = timedelta(days=1)
"""A phone's clock may be behind."""


def may_vouch_for(address: str) -> bool:
    """Tell whether a phone believes the authority about an IP address.

    Example:
        >>> may_vouch_for("192.168.43.7"), may_vouch_for("198.18.0.1")
        (True, False)
    """
    known = ipaddress.ip_address(address)
    return any(known in ipaddress.ip_network(network) for network in NETWORKS)


def new_authority(now: datetime) -> tuple[x509.Certificate, ec.EllipticCurvePrivateKey]:
    """Return the certificate and the key of a new authority."""
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


def leaf(
    signer: x509.Certificate,
    signer_key: ec.EllipticCurvePrivateKey,
    addresses: Sequence[str],
    now: datetime,
) -> tuple[x509.Certificate, ec.EllipticCurvePrivateKey]:
    """Return a certificate for a server, signed by the authority, and its key."""
    key = ec.generate_private_key(ec.SECP256R1())
    names = x509.SubjectAlternativeName([general_name(address) for address in addresses])
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


def general_name(address: str) -> x509.GeneralName:
    """Return an IP address or a name as certificates have it."""
    try:
        return x509.IPAddress(ipaddress.ip_address(address))
    except ValueError:
        return x509.DNSName(address)
