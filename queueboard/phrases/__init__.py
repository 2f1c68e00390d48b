"""Values into the trade's sentences, one file per area; screens, papers and command line speak through these alone.

typed     what a person types into values: parse_tag, parse_day, parse_time, parse_count, parse_cents
dates     ship_by_word, day_words, date_words, when_words, time_words, promise_words, told_words, lateness_words,
          done_by_words, age_words, minutes_words, saved_words, many
bill      charge_words, sums_words, parts_words, bill_lines, limit_words
money     money, amount, owed_words, box_money_words
knives    knife_line, knife_name, knife_signs, length_words, place_words, wait_words, last_seen_words
promising advice_lines, offer_words, sum_words, room_words, answer_words, planned_words, sure_words
said      chances_table, kept_words, minutes_table, yield_words
labels    label_words (of a box), label_due_words (of a due), label_wants (what to do)
boxes     n_of_m, ready_words, standing_words, box_title, box_due_word, box_signs, counts_words, waits_words, due_words,
          box_done_words, batch_totals, box_row (a line of the table of all boxes), ready_to_fetch
counts    box_sum_words, note_words, moved_lines, looks_like_words, found_knife_words, found_where_words
phone     phone_sentence
day       day_line_words, runs_today, runs_later, run_words, run_minutes_words, run_knife_words, belts_words,
          clock_words, leaves_today, leave_words, waiting_boxes, waiting_words, change_words
bench     bench_run, own_run, next_free_run, run_head_words, clock_of_run_words, finished_words
late      late_boxes, late_words, late_parts, slack_words, overload_words, heaviest_overload_words, outlook_lines,
          received_words
moves     step_words, undo_words, undone_words, history_words
closing   step_question, missing_words, label_check_words, settle_choices, going_words, gone_sentence, settled_words
belts     belt_words
helping   what can be done on each screen: the beginning of its help
cautions  BENCH, PACKING, HAND_OVER, END_OF_DAY, and one line of each: BENCH_SHORT, PACKING_SHORT, HAND_OVER_SHORT

A person's text (a name, a mark) stands last in its line, so that text written right to left moves nothing behind it.
"""
