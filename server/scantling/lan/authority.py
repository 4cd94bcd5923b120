"""The certificate authority of one laptop. A phone that trusts it trusts it for this laptop and for nothing else.

What it can sign for stands in its own certificate, as name constraints (RFC 5280, section 4.2.1.10): the laptop's one
.local name, addresses of private networks, and servers alone. So whoever stole its key could pretend to be no bank, no
mail server and no other name; and the key is readable by its owner only, which is checked each time.
"""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from pathlib import Path

from cryptography import x509
from cryptography.hazmat.primitives import hashes, serialization
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.x509.oid import ExtendedKeyUsageOID, NameOID

from scantling.lan.addresses import LOOPBACK, PRIVATE
from scantling.lan.private_file import read_private, write_private
from scantling.lan.refusals import LanError

FOLDER = "certificates"
FILE_NAME = "authority.pem"
YEARS = 10
DAY = dt.timedelta(days=1)
#: Everything that a key may be used for and this one is not.
NO_OTHER_USE = dict.fromkeys(
    (
        *("digital_signature", "content_commitment", "key_encipherment", "data_encipherment", "key_agreement"),
        *("encipher_only", "decipher_only"),
    ),
    False,
)


@dataclass(frozen=True, slots=True)
class Authority:
    key: ec.EllipticCurvePrivateKey
    certificate: x509.Certificate

    @property
    def fingerprint(self) -> str:
        """SHA-256 as phones show it: pairs of digits with colons."""
        return self.certificate.fingerprint(hashes.SHA256()).hex(":").upper()

    @property
    def names(self) -> list[str]:
        """The host names that it can vouch for."""
        said = self.certificate.extensions.get_extension_for_class(x509.NameConstraints).value.permitted_subtrees
        return [one.value for one in said or () if isinstance(one, x509.DNSName)]

    @property
    def der(self) -> bytes:
        return self.certificate.public_bytes(serialization.Encoding.DER)


def load_authority(folder: Path, name: str, now: dt.datetime) -> Authority:
    """The authority kept in a data folder, made at the first call. Raises LanError."""
    found = find_authority(folder)
    if found is None:
        found = make_authority(name, now)
        write_private(folder / FOLDER / FILE_NAME, _pem(found))
    return found


def find_authority(folder: Path) -> Authority | None:
    """The authority kept in a data folder, or None. Raises LanError."""
    path = folder / FOLDER / FILE_NAME
    try:
        text = read_private(path)
        key = serialization.load_pem_private_key(text, None)
        certificate = x509.load_pem_x509_certificate(text)
    except FileNotFoundError:
        return None
    except (OSError, ValueError, TypeError) as error:
        raise LanError("key-broken", path=path, why=error, folder=path.parent) from error
    if not isinstance(key, ec.EllipticCurvePrivateKey) or key.public_key() != certificate.public_key():
        raise LanError("key-broken", path=path, why="key and certificate are not of one pair", folder=path.parent)
    return Authority(key, certificate)


def make_authority(name: str, now: dt.datetime) -> Authority:
    """An authority for one host name and private addresses, for ten years from the day before."""
    key = ec.generate_private_key(ec.SECP256R1())
    # Without a common name it never shows among the certificates that an iPhone lets a person trust.
    subject = x509.Name(
        [
            x509.NameAttribute(NameOID.ORGANIZATION_NAME, "Scantling on a laptop in this house"),
            x509.NameAttribute(NameOID.COMMON_NAME, f"{name} ({now:%Y-%m-%d})"),
        ]
    )
    builder = (
        x509.CertificateBuilder(subject, subject, key.public_key(), x509.random_serial_number())
        .not_valid_before(now - DAY)
        .not_valid_after(now + YEARS * 365 * DAY)
        .add_extension(x509.BasicConstraints(ca=True, path_length=0), critical=True)
        .add_extension(x509.KeyUsage(key_cert_sign=True, crl_sign=True, **NO_OTHER_USE), critical=True)
        .add_extension(x509.ExtendedKeyUsage([ExtendedKeyUsageOID.SERVER_AUTH]), critical=False)
        .add_extension(x509.NameConstraints(_permitted(name), None), critical=True)
        .add_extension(x509.SubjectKeyIdentifier.from_public_key(key.public_key()), critical=False)
    )
    return Authority(key, builder.sign(key, hashes.SHA256()))


def _permitted(name: str) -> list[x509.GeneralName]:
    return [x509.DNSName(name), *(x509.IPAddress(net) for net in (*PRIVATE, *LOOPBACK))]


def _pem(authority: Authority) -> bytes:
    return private_pem(authority.key) + authority.certificate.public_bytes(serialization.Encoding.PEM)


def private_pem(key: ec.EllipticCurvePrivateKey) -> bytes:
    return key.private_bytes(
        serialization.Encoding.PEM, serialization.PrivateFormat.PKCS8, serialization.NoEncryption()
    )
