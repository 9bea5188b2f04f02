package org.arcsay.ui;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import javafx.scene.input.KeyCode;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.model.HelpCard;
import org.junit.jupiter.api.Test;

class PhrasesWindowTest extends HeadlessWindow {
    private static final HelpCard CARD = SpokenGrammar.standard().helpCard();

    @Override
    protected void show() {
        PhrasesWindow.show(stage, CARD, Look.standard());
    }

    @Test
    void everySectionOfTheGrammarIsShownAndEscapeCloses() {
        for (HelpCard.Section section : CARD.sections()) {
            assertTrue(shows(section.heading()), section.heading());
            section.examples().forEach(example -> assertTrue(shows(example), example));
        }
        push(KeyCode.ESCAPE);
        assertFalse(stage.isShowing());
    }

    @Test
    void everyControlHasARoleANameAndRoom() {
        everyControlHasARoleANameAndRoomAtEverySize();
    }

    @Test
    void everyControlIsReachedByKeyboard() {
        everyControlIsReachedByTabAndShowsThatItHasTheFocus();
    }
}
