"""The network of a house: how a phone reaches this laptop, and knows that it is this one.

identity      the one origin that phones know this notebook by, kept in its folder
addresses     this machine's addresses on private networks
authority     a certificate authority that can sign for this laptop alone
leaf          the certificate that the server shows, renewed by itself
own           what is wrong with a certificate of the owner's own
announce      the name on the network (mDNS)
code          QR codes, for a terminal and for a page
trust         the plain page that helps a phone to trust the authority
home          all of it together, kept up to date while the server runs
"""
