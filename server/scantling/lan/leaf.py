"""The certificate that the server shows, renewed by itself: when it nears its end, or no longer names the address.

397 days, because some phones have refused more: Apple asks for at most 825 for an authority that its owner added
(support.apple.com/103769) and 398 for any other (support.apple.com/102028). EC P-256, names as subject alternative
names, use as a server: what both kinds of phone ask for.
"""

from __future__ import annotations

import datetime as dt
import ssl
from collections.abc import Sequence
from pathlib import Path

from cryptography import x509
from cryptography.hazmat.primitives import hashes, serialization
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.x509.oid import ExtendedKeyUsageOID, NameOID

from scantling.lan.addresses import Address
from scantling.lan.authority import DAY, FOLDER, Authority, private_pem
from scantling.lan.private_file import read_private, write_private
from scantling.lan.refusals import LanError

FILE_NAME = "server.pem"
DAYS = 397
RENEW_DAYS = 60
NO_OTHER_USE = dict.fromkeys(
    (
        *("content_commitment", "key_encipherment", "data_encipherment", "key_agreement", "key_cert_sign"),
        *("crl_sign", "encipher_only", "decipher_only"),
    ),
    False,
)


def keep_leaf(folder: Path, authority: Authority, name: str, addresses: Sequence[Address], now: dt.datetime) -> bool:
    """Make sure that a good certificate is in the folder; True when a new one was made. Raises LanError."""
    path = leaf_path(folder)
    if why_renew(read_leaf(path), authority, name, addresses, now) is None:
        return False
    key = ec.generate_private_key(ec.SECP256R1())
    certificate = sign_leaf(authority, key.public_key(), name, addresses, now)
    # One file for both, or a crash between two could leave a key beside the certificate of another.
    write_private(path, private_pem(key) + certificate.public_bytes(serialization.Encoding.PEM))
    return True


def leaf_path(folder: Path) -> Path:
    return folder / FOLDER / FILE_NAME


def read_leaf(path: Path) -> x509.Certificate | None:
    """The certificate that is kept, or None when there is none that can be read. Raises LanError when it is open."""
    try:
        return x509.load_pem_x509_certificate(read_private(path))
    except (OSError, ValueError):
        return None


def why_renew(
    leaf: x509.Certificate | None, authority: Authority, name: str, addresses: Sequence[Address], now: dt.datetime
) -> str | None:
    """Why a certificate is no longer good, in words for a person, or None."""
    if leaf is None:
        return "there is none yet"
    try:
        leaf.verify_directly_issued_by(authority.certificate)
    except Exception:
        # Whatever is wrong with it (the signature, the names, the kind of key), another is made.
        return "it is of another authority"
    if now < leaf.not_valid_before_utc:
        return f"it begins on {leaf.not_valid_before_utc:%Y-%m-%d}: is the clock right?"
    if now > leaf.not_valid_after_utc - RENEW_DAYS * DAY:
        return f"it ends on {leaf.not_valid_after_utc:%Y-%m-%d}"
    named = leaf.extensions.get_extension_for_class(x509.SubjectAlternativeName).value
    if named.get_values_for_type(x509.DNSName) != [name]:
        return "it is for another name"
    missing = set(addresses) - set(named.get_values_for_type(x509.IPAddress))
    return f"it does not name {min(map(str, missing))}" if missing else None


def sign_leaf(
    authority: Authority, key: ec.EllipticCurvePublicKey, name: str, addresses: Sequence[Address], now: dt.datetime
) -> x509.Certificate:
    names = [x509.DNSName(name), *(x509.IPAddress(address) for address in addresses)]
    issuer = authority.certificate
    begins = max(now - DAY, issuer.not_valid_before_utc)
    return (
        x509.CertificateBuilder(
            issuer.subject, x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, name)]), key, x509.random_serial_number()
        )
        .not_valid_before(begins)
        .not_valid_after(min(begins + DAYS * DAY, issuer.not_valid_after_utc))
        .add_extension(x509.BasicConstraints(ca=False, path_length=None), critical=True)
        .add_extension(x509.KeyUsage(digital_signature=True, **NO_OTHER_USE), critical=True)
        .add_extension(x509.ExtendedKeyUsage([ExtendedKeyUsageOID.SERVER_AUTH]), critical=False)
        .add_extension(x509.SubjectAlternativeName(names), critical=False)
        .add_extension(x509.SubjectKeyIdentifier.from_public_key(key), critical=False)
        .add_extension(
            x509.AuthorityKeyIdentifier.from_issuer_public_key(authority.key.public_key()), critical=False
        )
        .sign(authority.key, hashes.SHA256())
    )


def tls_context(certificate: Path, key: Path | None = None) -> ssl.SSLContext:
    """A context that shows a certificate. Loaded again after a renewal, it shows the new one. Raises LanError."""
    context = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)
    context.minimum_version = ssl.TLSVersion.TLSv1_2
    try:
        context.load_cert_chain(certificate, key)
    except (OSError, ssl.SSLError) as error:
        raise LanError("own-certificate", path=certificate, why=error.strerror or error) from error
    return context
