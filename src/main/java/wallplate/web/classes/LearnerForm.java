package wallplate.web.classes;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

/** What a person writes over a learner's name or candidate number. */
public record LearnerForm(
        @NotBlank(message = "The name is missing.")
                @Size(max = 200, message = "A name of at most 200 letters, please.")
                @Nullable
                String name,
        @Size(max = 60, message = "A candidate number of at most 60 letters, please.") @Nullable String number) {

    String strippedName() {
        return name == null ? "" : name.strip();
    }

    String strippedNumber() {
        return number == null ? "" : number.strip();
    }
}
