/** The SQLite file: schema, journal, start-up checks. The only package that uses java.sql. */
@NullMarked
package org.arcsay.store;

import org.jspecify.annotations.NullMarked;
