package org.arcsay.store;

import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/**
 * Safe for any thread. Looks through the pages of large records while they can already be read; whoever wants to write waits for
 * the result.
 */
final class LookThrough {
    private static final long AGAIN_MS = 50;

    private final Database looked;
    private final FutureTask<Boolean> look;

    private LookThrough(Database looked, Advice advice) {
        this.looked = looked;
        this.look = new FutureTask<>(() -> look(advice));
    }

    /** Completes the message about damage by what can be done. */
    @FunctionalInterface
    interface Advice {
        StoreException to(StoreException damage) throws StoreException;
    }

    /**
     * Begins to look.
     *
     * @param looked a connection of its own, which is closed at the end
     * @param advice for the case of damage
     */
    static LookThrough begin(Database looked, Advice advice) {
        LookThrough begun = new LookThrough(looked, advice);
        Thread thread = new Thread(begun.look, "arcsay-look-through");
        thread.setDaemon(true);
        thread.start();
        return begun;
    }

    private boolean look(Advice advice) throws StoreException {
        try (looked) {
            looked.requireSound("quick_check");
            return true;
        } catch (StoreException e) {
            throw e.problem() == StoreException.Problem.DAMAGED ? advice.to(e) : e;
        }
    }

    /**
     * Waits until everything was looked through.
     *
     * @throws StoreException when it is not sound, or could not be looked through
     */
    void requireSound() throws StoreException {
        try {
            look.get();
        } catch (ExecutionException e) {
            if (e.getCause() instanceof StoreException why) {
                throw new StoreException(why.problem(), String.valueOf(why.getMessage()), why);
            }
            throw unknown(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw unknown(e);
        } catch (CancellationException e) {
            throw unknown(e);
        }
    }

    private StoreException unknown(Exception cause) {
        return new StoreException(
                StoreException.Problem.FAILED,
                "The records file " + looked.file() + " could not be looked through. Nothing was stored."
                        + " Start the program again.",
                cause);
    }

    /** Stops looking; returns when the connection is closed. */
    void stop() {
        while (!isDone()) {
            looked.interrupt();
        }
    }

    private boolean isDone() {
        try {
            look.get(AGAIN_MS, TimeUnit.MILLISECONDS);
            return true;
        } catch (TimeoutException e) {
            return false;
        } catch (ExecutionException | CancellationException e) {
            return true;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return true;
        }
    }
}
