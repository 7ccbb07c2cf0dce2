"""What a page may load and run: its Content-Security-Policy (W3C, level 3), as a meta tag.

A header of the server is lost once the book is kept on a device or opened from a folder, so each page says it itself.
Everything comes from the site; nothing runs that stands in the page but the few texts whose digests the policy holds.
Styles are held as strictly: no ``style`` attribute is used, and a page's own rules come with their digest.
"""

from __future__ import annotations

import base64
import hashlib
from collections.abc import Iterable

_CLOSED = "form-action 'none'; base-uri 'none'"
EMPTY = f"default-src 'none'; {_CLOSED}"
"""The policy of a page of words alone."""


def digest(text: str) -> str:
    """How a policy names the text of a script or a style sheet that stands in a page.

    >>> digest("alert(1)")
    "'sha256-bhHHL3z2vDgxUt0W3dWQOrprscmda2Y5pLsLg4GF+pI='"
    """
    return f"'sha256-{base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()}'"


def site_policy(script: str, preview: bool) -> str:
    """The policy of a page of the site, up to the digest of its own style sheet, which comes after it.

    ``script`` stands in the head of every page. A preview puts a script of its own into each page, to load it anew. A
    picture as data can do nothing: the theme's style sheet has its signs so.
    """
    inline = "'unsafe-inline'" if preview else digest(script)
    ours = "; ".join(f"{kind}-src 'self'" for kind in ("font", "connect", "manifest", "worker"))
    return f"default-src 'none'; script-src 'self' {inline}; img-src 'self' data:; {ours}; {_CLOSED}; style-src 'self'"


def file_policy(scripts: Iterable[str], style: str) -> str:
    """The policy of a page that is one file: it holds all that it needs, and loads nothing."""
    inline = " ".join(map(digest, scripts))
    return f"default-src 'none'; script-src {inline}; style-src {digest(style)}; img-src data:; {_CLOSED}"
