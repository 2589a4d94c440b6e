// Package diagnose weighs what a visit measured against what a sound machine
// would read, and says what is wrong, how surely, what one measurement would
// settle it, and in which order to mend.
//
// # The model of the evidence
//
// A machine of a known kind in known weather reads, on average, what the
// signature table says: the mean over many designs solved by the model of
// package cycle. One machine differs from that mean by u, which is the same on
// every reading of the visit. A cause of some severity shifts the readings by d
// and, because a machine that is off the mean feels a fault a little
// differently, by K u and a rest e:
//
//	readings = mean(weather) + (1 + K) u + d + e + instrument error
//
// u and e are Gaussian with covariances from the same designs, instrument
// error is that of the instruments in hand. A label value, a charging target or
// a fitted model of the very machine tells something of u before any cause is
// considered. Two causes add their shifts. Each explanation (nothing wrong, one
// cause, two causes, each at a few severities) thus predicts the readings with
// a covariance, and Bayes' rule weighs them; the Gaussian is widened to
// a Student t, since reality is not the model. An instrument that lies is
// a cause like any other: its shift follows from undoing the error, or, where the
// error depends on what the machine does, from a rule on the features.
//
// Explanations that none of the readings fits are a result too: the readings
// contradict each other.
package diagnose
