package wallplate.samples;

/** Something that a learner did wrong on purpose of the generator: which key or part, and which slip. */
record Slip(String key, String slip) {}
