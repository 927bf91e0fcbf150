package wallplate.measure;

import wallplate.sheet.LevelPage;

/** Looks at all that was found on a sheet together, and leaves open what does not stand up to it. */
final class SecondLook {

    private final Expectation expectation;
    private final Findings findings;

    SecondLook(Expectation expectation, Findings findings) {
        this.expectation = expectation;
        this.findings = findings;
    }

    void look(LevelPage page) {
        implausible();
        incoherent();
        if (page.cutOff()) {
            beyondThePicture();
        }
    }

    /** A size several times its expected one that fits no slip is a wrong reading rather than a wrong drawing. */
    private void implausible() {
        for (Measurement measurement : findings.all()) {
            if (measurement.finding() instanceof Finding.Quantity quantity
                    && expectation.isImplausible(measurement.key(), quantity.value())) {
                findings.leaveOpen(
                        "the size found is far from the one asked for, so other lines may have been taken for the part",
                        measurement.key());
            }
        }
    }

    /** Leaves open what neighbouring sizes contradict, and everything where the drawing was not understood. */
    private void incoherent() {
        Coherence coherence = new Coherence(expectation, findings);
        coherence.doubts().forEach((key, reason) -> findings.leaveOpen(reason, key));
        if (findings.isUncertain("wall.thickness")) {
            findings.leaveOpen("the wall that it is measured from is in doubt",
                    "rafter.overhang", "post.position", "rafter.heel-offset", "beam-filling.hatched");
        }
        boolean isWithoutBranders = findings.at("brander.count")
                .map(each -> each.finding().equals(new Finding.Count(0)))
                .orElse(false);
        if (findings.isUncertain("tie-beam.depth") && isWithoutBranders) {
            findings.leaveOpen("the tie beam below which the branders hang is in doubt",
                    "brander.count", "brander.width", "brander.depth", "brander.spacing", "brander.crossed");
        }
        if (coherence.isNotUnderstood()) {
            boolean areSlopesUnderstood = coherence.areSlopesUnderstood();
            findings.leaveOpen(
                    MeasuredSheet.NOT_UNDERSTOOD,
                    findings.all().stream()
                            .map(Measurement::key)
                            .filter(key -> !(areSlopesUnderstood && Coherence.isOfSlopes(key)))
                            .toArray(String[]::new));
        }
    }

    /** On a sheet that is cut off, what was not seen may lie in the part that is missing. */
    private void beyondThePicture() {
        findings.uncertain("a part of the sheet is not in the picture", findings.all().stream()
                .filter(each -> each.finding() instanceof Finding.Absent || each.finding() instanceof Finding.Count)
                .map(Measurement::key)
                .toArray(String[]::new));
    }
}
