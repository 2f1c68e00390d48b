"""What every test starts from: no colours or themes of the person's own terminal."""

import os

from hypothesis import settings

for name in ("NO_COLOR", "TEXTUAL_THEME", "TEXTUAL", "QUEUEBOARD_FILE", "QUEUEBOARD_THEME"):
    os.environ.pop(name, None)
os.environ["TEXTUAL_ANIMATIONS"] = "none"  # read when textual is first imported

settings.register_profile("steady", deadline=None)  # a busy machine is no mistake of the program
settings.load_profile("steady")
