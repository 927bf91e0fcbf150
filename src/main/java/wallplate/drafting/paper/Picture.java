package wallplate.drafting.paper;

import java.util.List;

/**
 * One page with everything on it, in the order in which it is inked.
 *
 * @param name a short name, unique among the pictures shown together, made of letters, digits and hyphens
 * @param title what the picture shows, in a few words
 * @param description what a person who cannot see it needs to know
 */
public record Picture(String name, double widthMm, double heightMm, String title, String description, List<Ink> inks) {

    public Picture {
        inks = List.copyOf(inks);
    }
}
