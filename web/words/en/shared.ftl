## What several rooms of the page say.

back = Back
save = Save
    .what = Save { $what }
saved = Saved
