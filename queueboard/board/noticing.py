"""Notices of the app itself: each goes to the foot of the screen on top, never over what somebody works on."""

from textual.app import App
from textual.notifications import SeverityLevel

from queueboard.board.base import NOTICE_SECONDS, ShopScreen


class NoticeApp(App[int]):
    """Shows notices on the screens' own lines; Textual would lay them over the lower right corner."""

    def notify(
        self,
        message: str,
        *,
        title: str = "",
        severity: SeverityLevel = "information",
        timeout: float | None = None,
        markup: bool = True,
    ) -> None:
        """Say it, literally, on the screen that is on top once the key at hand is done: a question may be closing."""
        self.call_later(self._notice, f"{title}: {message}" if title else message, severity, timeout)

    def _notice(self, message: str, severity: SeverityLevel, timeout: float | None) -> None:
        if isinstance(self.screen, ShopScreen) and self.screen.is_mounted:
            trouble = severity != "information"
            self.screen.give_notice(message, trouble=trouble, seconds=timeout or NOTICE_SECONDS)
        else:
            super().notify(message, severity=severity, timeout=timeout, markup=False)

    def clear_notifications(self) -> None:
        """Take away what stands at the foot."""
        super().clear_notifications()
        if self.screen_stack and isinstance(self.screen, ShopScreen):
            self.screen.give_notice("", trouble=False)
