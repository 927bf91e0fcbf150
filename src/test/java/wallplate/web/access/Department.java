package wallplate.web.access;

import java.util.Map;
import wallplate.accounts.Account;
import wallplate.moderation.Moderation;
import wallplate.ownership.Kind;
import wallplate.records.ClassSet;
import wallplate.records.KeptTask;

/**
 * People of a department and what they have: Keller has a class, a set with a sample given to a moderator, a task and a mark
 * sheet; nobody else has anything.
 *
 * @param records the number or name of Keller's record of each kind
 */
record Department(
        int number,
        Account keller,
        Account brandt,
        Account head,
        Account second,
        Account otherSecond,
        Account administrator,
        KeptTask task,
        ClassSet set,
        Moderation sample,
        Map<Kind, String> records) {}
