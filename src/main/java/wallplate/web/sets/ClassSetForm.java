package wallplate.web.sets;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

/** What a person fills in to make a class set. */
public record ClassSetForm(
        @NotNull(message = "Choose the task that the class drew.") @Nullable Long task,
        @NotBlank(message = "Give the class a name, such as 11B.")
                @Size(max = 200, message = "A name of at most 200 letters, please.")
                @Nullable
                String className,
        @Size(max = 300, message = "A title of at most 300 letters, please.") @Nullable String title,
        @Size(max = 60000, message = "A class list of at most 60,000 letters, please.") @Nullable String classList) {

    static ClassSetForm empty(@Nullable Long task) {
        return new ClassSetForm(task, "", "", "");
    }

    String className(String otherwise) {
        return className == null ? otherwise : className.strip();
    }

    /** The title, or what it is called where none was given. */
    String titleOr(String otherwise) {
        return title == null || title.isBlank() ? otherwise : title.strip();
    }

    public String classListText() {
        return classList == null ? "" : classList;
    }
}
