"""When will it be done: the order of work and when each box is finished."""
