package org.arcsay.report.csv;

import java.time.DateTimeException;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;

/** One line of the file with its cells by column; complaints go to the collector it was made with. For one thread. */
final class Row {
    private final long line;
    private final Map<Column, Integer> positions;
    private final List<String> cells;
    private final Consumer<ImportProblem> problems;

    Row(long line, Map<Column, Integer> positions, List<String> cells, Consumer<ImportProblem> problems) {
        this.line = line;
        this.positions = new EnumMap<>(positions);
        this.cells = cells;
        this.problems = problems;
    }

    /** The text of a cell; empty in a column that the file lacks. */
    String text(Column column) {
        Integer position = positions.get(column);
        return position == null ? "" : SafeText.read(cells.get(position));
    }

    boolean isEmpty(Column column) {
        return text(column).isEmpty();
    }

    /** The cell turned into a value, or nothing and a complaint when it cannot be. */
    <T> Optional<T> need(Column column, Function<String, T> reader) {
        if (isEmpty(column)) {
            complain(column, "is empty, but a value is needed here");
            return Optional.empty();
        }
        return read(column, reader);
    }

    /** Like {@link #need}, but an empty cell is nothing without a complaint. */
    <T> Optional<T> optional(Column column, Function<String, T> reader) {
        return isEmpty(column) ? Optional.empty() : read(column, reader);
    }

    /** The cell turned into a value even when it is empty, or nothing and a complaint when it cannot be. */
    <T> Optional<T> read(Column column, Function<String, T> reader) {
        try {
            return Optional.of(reader.apply(text(column)));
        } catch (DateTimeException e) {
            complain(column, "'" + text(column) + "' is not a time such as 2026-03-02T09:30:00+01:00");
        } catch (IllegalArgumentException e) {
            complain(column, String.valueOf(e.getMessage()));
        }
        return Optional.empty();
    }

    void complain(Column column, String message) {
        problems.accept(
                new ImportProblem(line, positions.getOrDefault(column, cells.size()) + 1, column.title(), message));
    }

    void complain(String message) {
        problems.accept(new ImportProblem(line, 0, "", message));
    }
}
