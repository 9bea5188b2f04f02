package org.arcsay.ui;

import java.util.List;
import java.util.function.Consumer;
import javafx.scene.control.Button;
import javafx.scene.control.TextField;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/** Asks why, before something is done that needs a reason. JavaFX thread only. */
final class ReasonPane extends VBox {
    private final TextField reason;

    private ReasonPane(Ask ask, Consumer<String> act, Runnable cancel) {
        getStyleClass().add("detail");
        reason = Parts.textField("Reason", ask.required() ? "" : "may stay empty");
        FlowPane offers = new FlowPane();
        offers.getStyleClass().add("chips");
        for (String offer : ask.offers()) {
            offers.getChildren()
                    .add(Parts.button(
                            "Use \u201c" + offer + "\u201d", "Types this reason in", () -> reason.setText(offer)));
        }
        Button go =
                Parts.strongButton(ask.verb(), "Does it, with the reason above", () -> act.accept(reason.getText()));
        if (ask.required()) {
            go.getStyleClass().add("danger");
            go.disableProperty().bind(reason.textProperty().map(String::isBlank));
        }
        FlowPane buttons = new FlowPane(go, Parts.button(ask.cancel(), "Escape", cancel));
        buttons.getStyleClass().add("chips");
        getChildren()
                .addAll(
                        Parts.label(ask.subject(), "title"),
                        Parts.field(ask.question(), reason, Parts.label("")),
                        offers,
                        buttons);
    }

    /**
     * What is asked.
     *
     * @param subject the reading it is about
     * @param offers reasons that can be taken over
     * @param required whether it cannot be done without a reason
     */
    private record Ask(
            String subject, String question, String verb, String cancel, List<String> offers, boolean required) {}

    static ReasonPane reject(String subject, Consumer<String> act, Runnable cancel) {
        return new ReasonPane(
                new Ask(
                        subject,
                        "Why is this reading rejected?",
                        "_Reject reading",
                        "Ca_ncel rejection",
                        List.of("misheard", "measured wrongly", "not a reading of this patient"),
                        true),
                act,
                cancel);
    }

    static ReasonPane keep(String subject, Consumer<String> act, Runnable cancel) {
        return new ReasonPane(
                new Ask(
                        subject,
                        "Why does it stay as said?",
                        "_Keep reading as said",
                        "Ca_ncel answer",
                        List.of("measured twice", "true for this joint"),
                        false),
                act,
                cancel);
    }

    void start() {
        reason.requestFocus();
    }
}
