/** The reported visit as an HL7 FHIR R4 bundle of observations. */
@NullMarked
package org.arcsay.report.fhir;

import org.jspecify.annotations.NullMarked;
