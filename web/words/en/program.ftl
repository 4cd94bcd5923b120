## What the program says of itself: starting, updating, the engine, the laptop.

start-no-answer = This browser's storage does not answer, and nothing can be saved before it does. What was saved is still there. Close other tabs of this page; if that does not help, close the browser and open it again.
start-refused = This browser will not open the journal ({ $why }). Nothing can be saved here: free some space, leave private browsing, or restart the browser.
update-cleared = the site's data was cleared

## The engine, where it is not running: why, as a part of a sentence.

engine-failed = The engine failed: { $why }.
    .again = Start the engine again
engine-no-answer = it did not answer in time
engine-other-build = it belongs to another version; load the page again
engine-not-loaded = it could not be loaded
engine-started-again = it was started again
engine-ended = it was ended

## Sharing with the laptop: how it stands.

sync-never = not shared yet
sync-by-file = travels by file
sync-shared = shared
sync-no-signal = no signal
sync-endless = the exchange did not come to an end
sync-busy =
    { $here ->
        [0]
            { $there ->
                [0] sharing
               *[other] sharing, { $there } to fetch
            }
       *[other]
            { $there ->
                [0] sharing, { $here } to send
               *[other] sharing, { $here } to send, { $there } to fetch
            }
    }
sync-attachments =
    { $here ->
        [0] attachments: { $there } to fetch
       *[other]
            { $there ->
                [0] attachments: { $here } to send
               *[other] attachments: { $here } to send, { $there } to fetch
            }
    }

## What the laptop answers, and why it has not everything.

laptop-none = This page has no laptop: the notebook travels by file.
laptop-no-answer = The laptop does not answer: is it on, and on this network?
laptop-answered = the laptop answered { $status }
    .sentence = The laptop answered { $status }.
aside-laptop = The laptop has other words under this entry's name, and they stand.
aside-file = These words came in a file, under the name of an entry that says something else here.
database-newer = A newer version of this page is open in another tab and has the notebook now: nothing more is saved from here. Open this page again.
file-too-large = This file is too large to be a notebook, and was not read.

## Attachments.

attachment-full = There is no room left on this device for photos; readings still have theirs. Free some space on it, then try again.
attachment-size = An attachment has from 1 to 32 million bytes: make it smaller.
attachment-not-whole = An attachment is not whole on this device.
attachment-stopped = The laptop does not go on with an attachment.
attachment-damaged = An attachment did not arrive as it is called: it is asked for again.
