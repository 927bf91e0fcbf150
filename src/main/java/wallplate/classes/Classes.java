package wallplate.classes;

import java.util.List;
import java.util.Optional;
import wallplate.ownership.Share;

/** The classes of all school years and who is and was in them. */
public interface Classes {

    /** The latest year first, then by name. */
    List<SchoolClass> all(Share share);

    Optional<SchoolClass> find(long id);

    /** Empty where the year has a class of that name already. */
    Optional<SchoolClass> add(String name, SchoolYear year);

    /** Everybody who is or was in a class, by place in the list. */
    List<Enrolment> enrolments(long classId);

    Optional<Enrolment> enrolment(long id);

    /** Every enrolment of the learner to whom this one belongs, the first one first. */
    List<Enrolment> history(long enrolmentId);

    /** Puts new learners behind those who are there. */
    void enrol(long classId, List<ListedLearner> learners);

    /** Puts another name or candidate number in place of the present one. */
    void rename(long enrolmentId, String name, String candidateNumber);

    /** Ends enrolments and begins new ones of the same learners in another class. */
    void move(List<Enrolment> enrolments, long toClassId);

    /** Ends enrolments; sheets and marks stay. */
    void leave(List<Enrolment> enrolments);

    void showNumbers(long classId, boolean shown);
}
