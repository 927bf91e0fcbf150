package wallplate.web.classes;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import wallplate.classes.SchoolYear;

/** What a person fills in to make a class. */
public record ClassForm(
        @NotBlank(message = "Give the class a name, such as 11B.")
                @Size(max = 200, message = "A name of at most 200 letters, please.")
                @Nullable
                String name,
        @NotBlank(message = "Give the school year, such as 2026 or 2026/27.") @Nullable String year) {

    static ClassForm empty() {
        return new ClassForm("", "");
    }

    Optional<SchoolYear> schoolYear() {
        return Optional.ofNullable(year).flatMap(SchoolYear::of);
    }

    String strippedName() {
        return name == null ? "" : name.strip();
    }
}
