"""The doctor: looks at all that a notebook stands on, changes nothing, and says in sentences what is wrong.

finding       one thing that was looked at, and how it is
keeping       folder, disk, notebook, database
attachments   the bytes that entries name
clocks        the machine's clock, held against the notebook
network       name, addresses and ports
certificates  the authority and what it signed, or a certificate of one's own
firewall      a guess whether phones are let in
round         all of them in turn
"""

from scantling.doctor.finding import Finding
from scantling.doctor.round import Asked, look_at_all

__all__ = ["Asked", "Finding", "look_at_all"]
