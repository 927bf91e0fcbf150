package wallplate.records.jdbc;

import com.fasterxml.jackson.annotation.JsonIgnoreProperties;
import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;
import wallplate.measure.Finding;
import wallplate.records.KeptAssessment;
import wallplate.solver.Expected;

/** The assessment of a sheet as text in the database; what was written is read back as it was. */
final class AssessmentJson {

    private static final JsonMapper MAPPER = JsonMapper.builder()
            .enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS)
            .addMixIn(Finding.class, NamedFinding.class)
            .addMixIn(Expected.class, NamedExpected.class)
            .build();

    private AssessmentJson() {}

    static String write(KeptAssessment assessment) {
        return MAPPER.writeValueAsString(assessment);
    }

    static KeptAssessment read(String json) {
        return MAPPER.readValue(json, KeptAssessment.class);
    }

    @JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "is")
    @JsonSubTypes({
        @JsonSubTypes.Type(value = Finding.Quantity.class, name = "quantity"),
        @JsonSubTypes.Type(value = Finding.Count.class, name = "count"),
        @JsonSubTypes.Type(value = Finding.YesNo.class, name = "yes-no"),
        @JsonSubTypes.Type(value = Finding.Word.class, name = "word"),
        @JsonSubTypes.Type(value = Finding.Absent.class, name = "absent"),
        @JsonSubTypes.Type(value = Finding.Uncertain.class, name = "uncertain")
    })
    @JsonIgnoreProperties("measured")
    private interface NamedFinding {}

    @JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "is")
    @JsonSubTypes({
        @JsonSubTypes.Type(value = Expected.Length.class, name = "length"),
        @JsonSubTypes.Type(value = Expected.Angle.class, name = "angle"),
        @JsonSubTypes.Type(value = Expected.Count.class, name = "count"),
        @JsonSubTypes.Type(value = Expected.YesNo.class, name = "yes-no"),
        @JsonSubTypes.Type(value = Expected.Word.class, name = "word")
    })
    private interface NamedExpected {}
}
