package wallplate.web.page;

import java.time.Clock;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpStatus;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.context.request.async.AsyncRequestNotUsableException;
import org.springframework.web.context.request.async.AsyncRequestTimeoutException;
import org.springframework.web.method.annotation.MethodArgumentTypeMismatchException;
import org.springframework.web.multipart.MaxUploadSizeExceededException;
import org.springframework.web.multipart.MultipartException;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.resource.NoResourceFoundException;

/** What went wrong becomes a page in plain words with a way on. */
@ControllerAdvice
class ErrorPages {

    private static final Logger LOG = LoggerFactory.getLogger(ErrorPages.class);
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss", Locale.ROOT);

    private final Clock clock;
    private final Words words;

    ErrorPages(Clock clock, Words words) {
        this.clock = clock;
        this.words = words;
    }

    @ExceptionHandler(NotFound.class)
    @ResponseStatus(HttpStatus.NOT_FOUND)
    ModelAndView notFound(NotFound missing) {
        return page(words.say("error.missing"), missing.getMessage());
    }

    @ExceptionHandler({NoResourceFoundException.class, MethodArgumentTypeMismatchException.class})
    @ResponseStatus(HttpStatus.NOT_FOUND)
    ModelAndView noSuchAddress(Exception unknown) {
        return page(words.say("error.missing"), words.say("error.address"));
    }

    @ExceptionHandler(MaxUploadSizeExceededException.class)
    @ResponseStatus(HttpStatus.CONTENT_TOO_LARGE)
    ModelAndView tooLarge(MaxUploadSizeExceededException large) {
        return page(words.say("too-large.title"), words.say("too-large.sentence"));
    }

    @ExceptionHandler(MultipartException.class)
    @ResponseStatus(HttpStatus.BAD_REQUEST)
    ModelAndView brokenUpload(MultipartException broken) {
        return page(words.say("error.upload.title"), words.say("error.upload.what"));
    }

    /** The page is gone or has listened long enough: there is nobody to tell. */
    @ExceptionHandler({AsyncRequestNotUsableException.class, AsyncRequestTimeoutException.class})
    void nobodyListens() {
        // Nothing can be written to a connection that is closed.
    }

    @ExceptionHandler(Exception.class)
    @ResponseStatus(HttpStatus.INTERNAL_SERVER_ERROR)
    ModelAndView failed(Exception failure) throws Exception {
        if (failure instanceof org.springframework.web.ErrorResponse response
                && response.getStatusCode().is4xxClientError()) {
            throw failure;
        }
        String at = TIME.format(clock.instant().atZone(ZoneId.systemDefault()));
        LOG.error("a page could not be made at {}", at, failure);
        return page(words.say("error.500.title"), words.say("error.500.logged")).addObject("time", at);
    }

    private static ModelAndView page(String title, String sentence) {
        return new ModelAndView("error/plain").addObject("title", title).addObject("sentence", sentence);
    }
}
