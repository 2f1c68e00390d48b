"""One column by itself: the cursor stays on its row while the rows change around it."""

from textual.app import App, ComposeResult
from textual.geometry import Region, Size

from queueboard.board.widgets.column import ColumnView
from queueboard.board.widgets.rows import Row
from queueboard.words import Column
from tests.board.host import rows_of
from tests.pictures import box_picture, knives, picture

B = Column.ON_BENCH


def rows(**counts: int) -> tuple[Row, ...]:
    """Rows of boxes named b417=3: so many knives on the bench."""
    boxes = tuple(box_picture(int(name[1:]), knives_=knives(int(name[1:]), *[B] * n)) for name, n in counts.items())
    return rows_of(boxes, B, picture(*boxes))


class One(App[None]):
    """A host for one column."""

    def compose(self) -> ComposeResult:
        yield ColumnView(B)

    @property
    def column(self) -> ColumnView:
        return self.query_one(ColumnView)

    def on_mount(self) -> None:
        self.column.set_rows(rows(b417=3, b420=20), frozenset())
        self.column.focus()

    def at(self) -> tuple[int, int]:
        """Box and knife number under the cursor; knife 0 for a heading."""
        row = self.column.current()
        assert row is not None
        return row.number, row.knife.number if row.knife is not None else 0


async def test_the_cursor_stays_on_its_knife_when_rows_come_before_it() -> None:
    """A box that comes in above moves the row, and the cursor goes with it."""
    app = One()
    async with app.run_test(size=(20, 10)):
        app.column.go_to(420, 420002)
        app.column.set_rows(rows(b399=5, b417=3, b420=20), frozenset())

        assert app.at() == (420, 2)


async def test_the_cursor_goes_to_the_next_knife_when_its_own_has_left() -> None:
    """Moving one knife after the other needs no arrow key; after the last the one before it is next."""
    app = One()
    async with app.run_test(size=(20, 10)):
        app.column.go_to(417, 417002)
        without = tuple(row for row in app.column.rows if row.key != (417, 417002))
        app.column.set_rows(without, frozenset())
        assert app.at() == (417, 3)

        app.column.go_to(420, 420020)
        app.column.set_rows(without[:-1], frozenset())
        assert app.at() == (420, 19)


async def test_after_the_last_knife_of_a_box_comes_the_next_heading() -> None:
    """When a box has left the column, another customer's knife is not under the cursor: its heading asks first."""
    app = One()
    async with app.run_test(size=(20, 10)):
        app.column.go_to(417, 417003)
        app.column.set_rows(rows(b420=20), frozenset())

        assert app.at() == (420, 0)


async def test_an_empty_column_has_no_row_under_the_cursor() -> None:
    """Keys in an empty column do nothing, and rows that come later are found."""
    app = One()
    async with app.run_test(size=(20, 10)) as pilot:
        app.column.set_rows((), frozenset())
        await pilot.press("down")
        assert app.column.current() is None

        app.column.set_rows(rows(b417=1), frozenset())
        assert app.at() == (417, 0)


async def test_the_heading_stays_in_sight_with_its_knives() -> None:
    """Going up to the first knife of a box scrolls to the heading that names it."""
    app = One()
    async with app.run_test(size=(20, 6)) as pilot:
        app.column.go_to(420, 420020)
        app.column.go_to(420, 420001)
        await pilot.pause()

        assert "420" in app.column.render_line(0).text


async def test_space_goes_from_box_to_box() -> None:
    """The next box is one key away, however many knives lie between."""
    app = One()
    async with app.run_test(size=(20, 10)) as pilot:
        await pilot.press("space")

        assert app.at() == (420, 0)


async def test_a_click_puts_the_cursor_there() -> None:
    """The row that was clicked is the one that is drawn there, also after scrolling."""
    app = One()
    async with app.run_test(size=(20, 10)) as pilot:
        app.column.go_to(420, 420020)
        await pilot.pause()
        drawn = app.column.render_line(3).text
        await pilot.click(ColumnView, offset=(5, 3))

        assert drawn.strip().startswith(f"-{app.at()[1]} ")


async def test_a_marked_knife_has_a_sign() -> None:
    """The mark is a sign in the row, so it is seen without colour."""
    app = One()
    async with app.run_test(size=(20, 10)):
        app.column.set_rows(app.column.rows, frozenset({417002}))
        lines = [app.column.render_line(y).text for y in range(6)]

        assert [line.strip()[:1] for line in lines if "-2" in line] == ["*"]


async def test_the_head_of_a_long_box_stays_in_sight() -> None:
    """Deep among the knives of a box longer than the column its head stands on top, and no knife is under it."""
    app = One()
    async with app.run_test(size=(20, 10)) as pilot:
        for number in (20, 15, 14, 9, 12):
            app.column.go_to(420, 420000 + number)
            await pilot.pause()
            shown = [app.column.render_line(y).text for y in range(10)]

            assert shown[0].split()[0] == "420"
            assert any(line.startswith("▸") and f"-{number} " in f"{line} " for line in shown), shown

        await pilot.click(ColumnView, offset=(4, 0))
        assert app.at() == (420, 0)


class Early(One):
    """A host that keeps how much the column has laid out when its rows come before it has a size."""

    early: Size

    def on_mount(self) -> None:
        super().on_mount()
        self.early = self.column.virtual_size


async def test_rows_are_laid_out_for_a_width_that_is_there() -> None:
    """Laid out for none, every row would be a lone … until the next look; they show whole once there is a size."""
    app = Early()
    async with app.run_test(size=(20, 10)):
        assert app.early == Size(0, 0)
        assert app.column.render_line(0).text.startswith("▸417 ")


async def test_a_line_is_drawn_anew_only_when_it_looks_otherwise() -> None:
    """The same objects come back as long as they look so, as wide as they are asked for."""
    app = One()
    async with app.run_test(size=(20, 10)) as pilot:
        whole = Region(0, 0, 20, 10)
        before = app.column.render_lines(whole)
        assert {line.cell_length for line in before} == {20}
        assert all(old is new for old, new in zip(before, app.column.render_lines(whole), strict=True))

        app.column.set_rows(app.column.rows, frozenset({417002}))
        marked = app.column.render_lines(whole)
        assert [n for n, (old, new) in enumerate(zip(before, marked, strict=True)) if old is not new] == [3]

        app.theme = "textual-light"
        await pilot.pause()
        light = app.column.render_lines(whole)
        assert [line.text for line in light] == [line.text for line in marked]
        assert not any(old is new for old, new in zip(marked, light, strict=True))


async def test_rows_that_come_and_go_are_drawn_once() -> None:
    """What was hidden and is shown again is as it was drawn; below the last row it is blank."""
    app = One()
    async with app.run_test(size=(20, 10)) as pilot:
        app.column.styles.scrollbar_gutter = "stable"  # as on the board: no line is as wide as its bar allows
        await pilot.pause()
        whole, rows_then = Region(0, 0, 20, 10), app.column.rows
        app.column.set_rows(rows_then[:-1], frozenset())
        before = app.column.render_lines(whole)
        app.column.set_rows(rows_then[:4], frozenset())
        assert [line.text.strip() for line in app.column.render_lines(whole)[6:]] == [""] * 4
        app.column.set_rows(rows_then, frozenset())
        assert all(old is new for old, new in zip(before, app.column.render_lines(whole), strict=True))
