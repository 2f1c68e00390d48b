"""What the planner says when the work has no meaning."""

from queueboard.errors import QueueboardError


class PlanError(QueueboardError, ValueError):
    """The work cannot be planned: a process without a run size, a knife without a process, a knife given twice."""
