"""The authority can vouch for this laptop and for nothing else: two independent verifiers are asked.

OpenSSL's command and cryptography's own verifier each know RFC 5280; neither is what made the certificates.
"""

import datetime as dt
import os
import shutil
import subprocess
from ipaddress import ip_address

import pytest
from cryptography import x509
from cryptography.hazmat.primitives import serialization
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.x509.verification import PolicyBuilder, Store, VerificationError
from scantling.lan.authority import DAY, load_authority, make_authority
from scantling.lan.leaf import DAYS, keep_leaf, leaf_path, read_leaf, sign_leaf, why_renew
from scantling.lan.refusals import LanError

NAME = "scantling-ab2cd.local"
NOW = dt.datetime(2026, 5, 4, 12, tzinfo=dt.UTC)
PLACE = [ip_address("192.168.7.20")]


@pytest.fixture(scope="module")
def authority():
    return make_authority(NAME, NOW)


def sign(authority, name=NAME, addresses=PLACE, now=NOW):
    key = ec.generate_private_key(ec.SECP256R1())
    return sign_leaf(authority, key.public_key(), name, addresses, now)


def is_good(authority, leaf, subject, when=NOW):
    policy = PolicyBuilder().store(Store([authority.certificate])).time(when.replace(tzinfo=None))
    try:
        policy.build_server_verifier(subject).verify(leaf, [])
    except VerificationError:
        return False
    return True


def openssl_says(tmp_path, authority, leaf, *options):
    for name, certificate in (("ca.pem", authority.certificate), ("leaf.pem", leaf)):
        (tmp_path / name).write_bytes(certificate.public_bytes(serialization.Encoding.PEM))
    at = str(int(NOW.timestamp()))
    command = ["openssl", "verify", "-x509_strict", "-purpose", "sslserver", "-attime", at, *options]
    done = subprocess.run(
        [*command, "-CAfile", tmp_path / "ca.pem", tmp_path / "leaf.pem"], capture_output=True, text=True, check=False
    )
    return done.returncode == 0, done.stdout + done.stderr


needs_openssl = pytest.mark.skipif(shutil.which("openssl") is None, reason="there is no openssl command here")


def test_the_laptops_own_name_and_address_are_vouched_for(authority):
    leaf = sign(authority)
    assert is_good(authority, leaf, x509.DNSName(NAME))
    assert is_good(authority, leaf, x509.IPAddress(PLACE[0]))
    assert not is_good(authority, leaf, x509.DNSName("scantling-zzzzz.local"))


FOREIGN = ["www.example.org", "scantling-zzzzz.local", "local", "example.local", f"{NAME}.example.org", "localhost"]


@pytest.mark.parametrize("name", FOREIGN)
def test_a_certificate_for_another_name_is_good_for_nothing(name, authority):
    assert not is_good(authority, sign(authority, name), x509.DNSName(name))


@pytest.mark.parametrize("address", ["203.0.113.9", "8.8.8.8", "172.32.0.1", "2001:db8::1"])
def test_a_certificate_for_a_public_address_is_good_for_nothing(address, authority):
    there = ip_address(address)
    assert not is_good(authority, sign(authority, addresses=[there]), x509.IPAddress(there))


@needs_openssl
def test_openssl_takes_the_laptops_certificate_and_no_other(tmp_path, authority):
    good, said = openssl_says(tmp_path, authority, sign(authority), "-verify_hostname", NAME)
    assert good, said
    for name in FOREIGN:
        good, said = openssl_says(tmp_path, authority, sign(authority, name))
        assert not good
        assert "permitted subtree violation" in said
    good, said = openssl_says(tmp_path, authority, sign(authority, addresses=[ip_address("8.8.8.8")]))
    assert not good
    assert "permitted subtree violation" in said


@needs_openssl
def test_openssl_takes_no_certificate_that_another_certificate_of_ours_signed(tmp_path, authority):
    """pathlen 0: whoever has the server's key has no authority."""
    key = ec.generate_private_key(ec.SECP256R1())
    between = sign_leaf(authority, key.public_key(), NAME, PLACE, NOW)
    forged = sign_leaf(type(authority)(key, between), key.public_key(), NAME, PLACE, NOW)
    (tmp_path / "between.pem").write_bytes(between.public_bytes(serialization.Encoding.PEM))
    good, _ = openssl_says(tmp_path, authority, forged, "-untrusted", str(tmp_path / "between.pem"))
    assert not good


def test_a_certificate_is_over_after_397_days_and_renewed_sixty_days_before(authority):
    leaf = sign(authority)
    assert leaf.not_valid_after_utc - leaf.not_valid_before_utc <= DAYS * DAY
    assert is_good(authority, leaf, x509.DNSName(NAME), NOW + 390 * DAY)
    assert not is_good(authority, leaf, x509.DNSName(NAME), NOW + 398 * DAY)
    assert why_renew(leaf, authority, NAME, PLACE, NOW + 335 * DAY) is None
    assert "it ends on" in why_renew(leaf, authority, NAME, PLACE, NOW + 337 * DAY)


def test_it_is_renewed_for_a_new_address_a_new_name_and_a_new_authority_and_else_kept(tmp_path, authority):
    assert keep_leaf(tmp_path, authority, NAME, PLACE, NOW)
    first = read_leaf(leaf_path(tmp_path))
    assert not keep_leaf(tmp_path, authority, NAME, PLACE, NOW + 30 * DAY)
    assert keep_leaf(tmp_path, authority, NAME, [ip_address("192.168.7.21")], NOW)
    assert keep_leaf(tmp_path, make_authority(NAME, NOW), NAME, PLACE, NOW)
    assert read_leaf(leaf_path(tmp_path)) != first


@pytest.mark.parametrize(
    ("leaf_of", "said"),
    [
        (lambda authority: None, "there is none"),
        (lambda authority: sign(make_authority(NAME, NOW)), "another authority"),
        (lambda authority: sign(authority, "scantling-zzzzz.local"), "another name"),
        (lambda authority: sign(authority, addresses=[]), "does not name 192.168.7.20"),
        (lambda authority: sign(authority, now=NOW + 9 * DAY), "is the clock right"),
    ],
    ids=["none", "another authority", "another name", "another address", "a clock set back"],
)
def test_what_is_wrong_with_a_certificate_is_said_in_words(leaf_of, said, authority):
    assert said in why_renew(leaf_of(authority), authority, NAME, PLACE, NOW)


def test_the_authority_is_made_once_and_its_key_is_its_owners_alone(tmp_path):
    made = load_authority(tmp_path, NAME, NOW)
    again = load_authority(tmp_path, NAME, NOW + 100 * DAY)
    assert again.fingerprint == made.fingerprint
    (path,) = (tmp_path / "certificates").iterdir()
    if os.name == "posix":
        assert path.stat().st_mode & 0o777 == 0o600


@pytest.mark.skipif(os.name != "posix", reason="only there do files carry these bits")
@pytest.mark.parametrize("mode", [0o644, 0o640, 0o604, 0o660])
def test_a_key_that_others_can_read_is_refused(mode, tmp_path):
    load_authority(tmp_path, NAME, NOW)
    (path,) = (tmp_path / "certificates").iterdir()
    path.chmod(mode)
    with pytest.raises(LanError) as refused:
        load_authority(tmp_path, NAME, NOW)
    assert refused.value.key == "key-open"
    assert "chmod 600" in refused.value.message


@pytest.mark.parametrize("spoil", [lambda data: b"", lambda data: data[:200], lambda data: data[: len(data) // 2]])
def test_a_damaged_key_is_refused_and_not_replaced(spoil, tmp_path):
    """Another would be made in silence, and every phone would stop trusting the laptop."""
    load_authority(tmp_path, NAME, NOW)
    (path,) = (tmp_path / "certificates").iterdir()
    path.write_bytes(spoil(path.read_bytes()))
    before = path.read_bytes()
    with pytest.raises(LanError) as refused:
        load_authority(tmp_path, NAME, NOW)
    assert refused.value.key == "key-broken"
    assert path.read_bytes() == before
