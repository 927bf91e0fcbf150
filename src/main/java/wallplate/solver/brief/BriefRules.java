package wallplate.solver.brief;

import java.util.List;

/** Every rule that briefs are checked by; a new one is registered here. */
public final class BriefRules {

    private static final List<BriefRule> ALL =
            List.of(new PaperRules(), new CoveringRules(), new RafterSpanRule(), new PartRules());

    private BriefRules() {}

    public static List<BriefRule> all() {
        return ALL;
    }
}
