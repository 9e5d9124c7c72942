"""The crew's own authority vouches for a private network's addresses, and for nothing else."""

import socket
import ssl
import stat
import threading
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from cryptography import x509
from cryptography.hazmat.primitives import serialization

from longpoint.errors import ExchangeError
from longpoint.serve import authority as made
from longpoint.serve.authority import TlsFiles, tls_files
from longpoint.serve.certificates import LEAF_DAYS, may_vouch_for

NOW = datetime.now(UTC)


def is_trusted(files: TlsFiles, name: str) -> bool:
    """Tell whether OpenSSL trusts the server for a name, with nothing but the authority."""
    server = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)
    server.load_cert_chain(files.certificate, files.key)
    client = ssl.create_default_context(cafile=str(files.authority))
    near, far = socket.socketpair()

    def serve() -> None:
        try:
            server.wrap_socket(far, server_side=True).close()
        except OSError:
            far.close()

    thread = threading.Thread(target=serve)
    thread.start()
    try:
        client.wrap_socket(near, server_hostname=name).close()
    except ssl.SSLCertVerificationError:
        return False
    finally:
        near.close()
        thread.join()
    return True


def test_a_phone_that_trusts_the_authority_trusts_the_laptop(tmp_path: Path) -> None:
    files = tls_files(tmp_path, ["127.0.0.1", "192.168.43.7", "laptop.local"], NOW)
    assert all(is_trusted(files, name) for name in ("192.168.43.7", "laptop.local"))
    assert not is_trusted(files, "192.168.43.8")


@pytest.mark.parametrize("name", ["bank.example", "8.8.8.8", "local.example"])
def test_the_authority_is_void_for_anything_on_the_internet(tmp_path: Path, name: str) -> None:
    """RFC 5280, 4.2.1.10: names outside the permitted subtrees are void (from memory)."""
    files = tls_files(tmp_path, [name], NOW)
    assert not is_trusted(files, name)


def test_the_authority_signs_no_other_authority(tmp_path: Path) -> None:
    files = tls_files(tmp_path, ["127.0.0.1"], NOW)
    found = x509.load_pem_x509_certificate(files.authority.read_bytes())
    basic = found.extensions.get_extension_for_class(x509.BasicConstraints)
    assert basic.critical
    assert (basic.value.ca, basic.value.path_length) == (True, 0)
    assert found.extensions.get_extension_for_class(x509.NameConstraints).critical


def test_keys_are_for_their_owner_alone(tmp_path: Path) -> None:
    tls_files(tmp_path / "crew", ["127.0.0.1"], NOW)
    keys = list((tmp_path / "crew").glob("*.key"))
    assert len(keys) == 2
    assert all(stat.S_IMODE(key.stat().st_mode) == 0o600 for key in keys)
    assert stat.S_IMODE((tmp_path / "crew").stat().st_mode) == 0o700


def test_the_authority_stays_and_the_laptops_certificate_is_made_anew(tmp_path: Path) -> None:
    first = tls_files(tmp_path, ["127.0.0.1"], NOW)
    before = first.certificate.read_bytes()
    assert tls_files(tmp_path, ["127.0.0.1"], NOW).certificate.read_bytes() == before
    moved = tls_files(tmp_path, ["127.0.0.1", "10.0.0.5"], NOW)
    assert moved.certificate.read_bytes() != before
    later = tls_files(tmp_path, ["127.0.0.1"], NOW + timedelta(days=LEAF_DAYS - 5))
    found = x509.load_pem_x509_certificate(later.certificate.read_bytes())
    assert found.not_valid_after_utc > NOW + timedelta(days=LEAF_DAYS)
    assert later.fingerprint == first.fingerprint


def test_damaged_certificates_are_told(tmp_path: Path) -> None:
    files = tls_files(tmp_path, ["127.0.0.1"], NOW)
    files.authority.write_text("no certificate", encoding="utf-8")
    with pytest.raises(ExchangeError, match="put the folder aside"):
        tls_files(tmp_path, ["127.0.0.1"], NOW)


@pytest.mark.parametrize("cut", ["laptop.crt", "laptop.key"])
def test_a_certificate_cut_off_in_its_making_is_made_anew(tmp_path: Path, cut: str) -> None:
    files = tls_files(tmp_path, ["127.0.0.1"], NOW)
    (tmp_path / cut).write_bytes((tmp_path / cut).read_bytes()[:40])
    again = tls_files(tmp_path, ["127.0.0.1"], NOW)
    assert again.fingerprint == files.fingerprint
    assert is_trusted(again, "127.0.0.1")


def test_a_certificate_with_another_key_is_made_anew(tmp_path: Path) -> None:
    """As it lies when the laptop dies after the key was written and before its certificate."""
    tls_files(tmp_path, ["127.0.0.1"], NOW)
    other = tls_files(tmp_path / "other", ["127.0.0.1"], NOW)
    (tmp_path / "laptop.key").write_bytes(other.key.read_bytes())
    assert is_trusted(tls_files(tmp_path, ["127.0.0.1"], NOW), "127.0.0.1")


@pytest.mark.parametrize("lost", ["missing", "another's", "damaged"])
def test_a_lost_key_is_told_and_what_it_signed_is_used_to_its_end(
    tmp_path: Path, lost: str
) -> None:
    first = tls_files(tmp_path, ["127.0.0.1"], NOW)
    assert first.lost_on is None
    key = tmp_path / "authority.key"
    before = key.read_bytes()
    if lost == "missing":
        key.unlink()
    else:
        tls_files(tmp_path / "other", ["127.0.0.1"], NOW)
        other = (tmp_path / "other" / "authority.key").read_bytes()
        key.write_bytes(other if lost == "another's" else b"x")

    late = NOW + timedelta(days=LEAF_DAYS - 1)
    for when in (NOW, late):
        still = tls_files(tmp_path, ["127.0.0.1"], when)
        assert still.fingerprint == first.fingerprint
        assert still.lost_on == (NOW + timedelta(days=LEAF_DAYS)).date()
        assert is_trusted(still, "127.0.0.1")
    for addresses, when in ((["10.0.0.5"], NOW), (["127.0.0.1"], late + timedelta(days=2))):
        with pytest.raises(ExchangeError, match="--anew") as refused:
            tls_files(tmp_path, addresses, when)
        assert "trust it anew" in refused.value.do

    key.write_bytes(before)
    moved = tls_files(tmp_path, ["10.0.0.5"], NOW)
    assert (moved.fingerprint, moved.lost_on) == (first.fingerprint, None)


def test_an_authority_that_phones_trust_is_never_made_anew_unasked(tmp_path: Path) -> None:
    first = tls_files(tmp_path, ["127.0.0.1"], NOW)
    (tmp_path / "authority.crt").unlink()
    (tmp_path / "authority.key").unlink()
    for _ in range(2):
        with pytest.raises(ExchangeError, match="authority that phones trust"):
            tls_files(tmp_path, ["127.0.0.1"], NOW)
    with pytest.raises(ExchangeError, match="authority that phones trust"):
        made.authority_file(tmp_path, NOW)
    made.authority_anew(tmp_path, NOW)
    again = tls_files(tmp_path, ["127.0.0.1"], NOW)
    assert again.fingerprint != first.fingerprint
    assert is_trusted(again, "127.0.0.1")


def test_what_lay_there_before_a_new_authority_is_set_aside(tmp_path: Path) -> None:
    tls_files(tmp_path, ["127.0.0.1"], NOW)
    before = {each.name: each.read_bytes() for each in tmp_path.iterdir()}
    made.authority_anew(tmp_path, NOW)
    made.authority_anew(tmp_path, NOW)
    for name, content in before.items():
        aside = tmp_path / f"{name}.before-1"
        assert aside.read_bytes() == content
        assert stat.S_IMODE(aside.stat().st_mode) == (0o600 if ".key" in name else 0o644)
    assert {"authority.crt.before-2", "authority.crt"} <= {p.name for p in tmp_path.iterdir()}


@pytest.mark.parametrize(
    ("address", "is_good"),
    [
        ("10.1.2.3", True),
        ("172.31.255.254", True),
        ("172.32.0.1", False),
        ("169.254.1.1", True),
        ("198.18.0.1", False),
        ("8.8.8.8", False),
    ],
)
def test_no_address_is_served_that_the_authority_is_void_for(
    tmp_path: Path, address: str, is_good: bool
) -> None:
    """Held against OpenSSL; 198.18.0.0/15 is for benchmarks (RFC 2544), from memory."""
    assert may_vouch_for(address) is is_good
    assert is_trusted(tls_files(tmp_path, [address], NOW), address) is is_good


def test_a_key_fits_its_certificate(tmp_path: Path) -> None:
    files = tls_files(tmp_path, ["127.0.0.1"], NOW)
    key = serialization.load_pem_private_key(files.key.read_bytes(), None)
    own = x509.load_pem_x509_certificate(files.certificate.read_bytes()).public_key()
    assert key.public_key() == own
    assert len(made.fingerprint(files.authority.read_bytes()).split(":")) == 32
