package wallplate.web.access;

import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.autoconfigure.condition.ConditionalOnWebApplication;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.session.config.SessionRepositoryCustomizer;
import org.springframework.session.jdbc.JdbcIndexedSessionRepository;
import org.springframework.session.jdbc.PostgreSqlJdbcIndexedSessionRepositoryCustomizer;

/** How sessions are written to either database where two requests of one session come at once. */
@Configuration(proxyBeanMethods = false)
@ConditionalOnWebApplication
class SessionTables {

    private static final String H2_ADD_OR_REPLACE =
            """
            merge into %TABLE_NAME%_ATTRIBUTES (session_primary_id, attribute_name, attribute_bytes)
            key (session_primary_id, attribute_name) values (?, ?, ?)""";

    @Bean
    SessionRepositoryCustomizer<JdbcIndexedSessionRepository> sessionsOfTheDatabase(
            @Value("${spring.datasource.url}") String address) {
        return address.startsWith("jdbc:h2:")
                ? sessions -> sessions.setCreateSessionAttributeQuery(H2_ADD_OR_REPLACE)
                : new PostgreSqlJdbcIndexedSessionRepositoryCustomizer();
    }
}
