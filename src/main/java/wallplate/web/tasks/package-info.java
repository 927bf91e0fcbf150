/** Drawing tasks: the list, the form, the model answer, import and export. */
@NullMarked
package wallplate.web.tasks;

import org.jspecify.annotations.NullMarked;
