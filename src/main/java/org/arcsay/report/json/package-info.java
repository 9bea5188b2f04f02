/** The report as JSON, described by a published JSON Schema. */
@NullMarked
package org.arcsay.report.json;

import org.jspecify.annotations.NullMarked;
